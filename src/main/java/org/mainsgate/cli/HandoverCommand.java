package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.mainsgate.report.Pdf;
import org.mainsgate.report.Terms;
import org.mainsgate.report.Terms.Saying;
import org.mainsgate.seal.SealedFile;
import org.mainsgate.seal.TrustList;
import org.mainsgate.seal.Verification;
import org.mainsgate.seal.Verifier;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Seals a record for somebody who gets the instrument. */
@Command(
    name = "handover",
    mixinStandardHelpOptions = true,
    header = "Sign the record that goes with an instrument",
    description = {
      "",
      "Seals a record for whoever gets the instrument: sold, lent, or returned. What",
      "does not pass is handed over as `not for connection`, with what was done to its",
      "plug. Only what passes a stage that speaks of use is lent; where a person's",
      "judgement makes it pass, only to somebody named who is competent for it.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate handover demo-data/north-light NL-04 --to \"a museum\" --as sold \\",
      "      --seller private --use display \\",
      "      --plug cut-off --plug-by \"the restorer\" -o NL-04.pdf",
      "",
      "Law on second-hand electrical goods differs by country; the record defers to it.",
      "Ends like `check`."
    })
final class HandoverCommand implements Callable<Integer> {
  private final App app;

  @Mixin Sealing sealing = new Sealing();

  /** How it changes hands. */
  enum As {
    SOLD,
    LENT,
    RETURNED;

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  @Option(names = "--to", paramLabel = "NAME", required = true, description = "who gets it")
  String to;

  @Option(
      names = "--as",
      paramLabel = "HOW",
      required = true,
      description = "${COMPLETION-CANDIDATES}")
  As how;

  @Option(names = "--until", paramLabel = "DATE", description = "lent: to be back by")
  @Nullable LocalDate until;

  @Option(names = "--place", paramLabel = "PLACE", description = "lent: where it is used")
  @Nullable String place;

  @Option(
      names = "--user",
      paramLabel = "NAME",
      description = "lent: who uses it and was shown how")
  @Nullable String user;

  @Option(
      names = "--competent",
      paramLabel = "TEXT",
      description =
          "lent, where a person's judgement makes it pass: what the user is competent for")
  @Nullable String competent;

  @Option(
      names = "--seller",
      paramLabel = "WHO",
      description = "sold: trade or private; the seller's duties differ")
  @Nullable String seller;

  @Option(
      names = "--use",
      paramLabel = "USE",
      description = "sold: display, bench or project, as the new owner says")
  @Nullable String use;

  @Option(
      names = "--plug",
      paramLabel = "STATE",
      description = "not for connection: cut-off, or locked in a plug cover")
  @Nullable String plug;

  @Option(names = "--plug-by", paramLabel = "NAME", description = "who did that")
  @Nullable String plugBy;

  @Option(
      names = "--next",
      paramLabel = "DATE",
      description = "by when it has to be looked at again")
  @Nullable LocalDate next;

  @Option(
      names = "--tells",
      paramLabel = "TEXT",
      description = "returned: what the borrower says; used, opened, dropped, wet?")
  @Nullable String tells;

  @Option(
      names = "--went-out",
      paramLabel = "FILE",
      description = "returned: the sealed record that it went out with")
  @Nullable Path wentOut;

  HandoverCommand(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Optional<Terms.WentOut> out = Optional.empty();
    if (wentOut != null) {
      out = wentOut(wentOut);
      if (out.isEmpty()) {
        return Exit.UNUSABLE.code();
      }
    }
    Terms.Purpose purpose = Terms.Purpose.valueOf(how.name());
    return sealing.seal(app, new Sealing.Asked(purpose, Optional.of(to), said(), out)).code();
  }

  private Map<Saying, String> said() {
    Map<Saying, String> said = new LinkedHashMap<>();
    put(said, Saying.UNTIL, until);
    put(said, Saying.PLACE, place);
    put(said, Saying.USER, user);
    put(said, Saying.COMPETENT, competent);
    put(said, Saying.SELLER, seller);
    put(said, Saying.USE, use);
    put(said, Saying.PLUG, plug);
    put(said, Saying.PLUG_BY, plugBy);
    put(said, Saying.TELLS, tells);
    put(said, Saying.NEXT, next);
    return said;
  }

  private static void put(Map<Saying, String> said, Saying saying, @Nullable Object text) {
    if (text != null && !text.toString().isBlank()) {
      said.put(saying, text.toString().strip());
    }
  }

  private Optional<Terms.WentOut> wentOut(Path file) throws IOException {
    byte[] bytes = BoundedFile.read(file, SealedFile.MOST_BYTES);
    Verification found = Verifier.verify(bytes, TrustList.NONE, app.today(), new Pdf());
    if (!found.broken().isEmpty()) {
      app.err().println(file + ": " + found.broken().get(0).words());
      return Optional.empty();
    }
    Optional<Terms.WentOut> out =
        found.terms().flatMap(terms -> Sealing.wentOut(terms, found.heads(), sealing.tag));
    if (out.isEmpty()) {
      app.err().println(file + ": this is a record of another instrument");
    }
    return out;
  }
}
