package org.mainsgate.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.mainsgate.report.Pdf;
import org.mainsgate.seal.SealedFile;
import org.mainsgate.seal.TrustList;
import org.mainsgate.seal.Verification;
import org.mainsgate.seal.Verifier;
import org.mainsgate.source.Complaints;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Writes down that rules are known which the program does not carry. */
@Command(
    name = "trust",
    mixinStandardHelpOptions = true,
    header = "Write down that you know the rules of a sealed record",
    description = {
      "",
      "Shows the identity of the rules that a sealed record was judged under, and where",
      "they say something else than ours. With `--identity` and the same identity, as",
      "their author has given it to you, and the reason, they are known from now on.",
      ""
    },
    footer = {
      "",
      "For example:",
      "  mainsgate rules trust NL-01.pdf",
      "  mainsgate rules trust NL-01.pdf --identity 779a68f4... --because \"our own rules\""
    })
final class RulesTrust implements Callable<Integer> {
  private final App app;

  @Parameters(index = "0", paramLabel = "FILE", description = "a sealed record")
  Path file;

  @Option(
      names = "--identity",
      paramLabel = "HEX",
      description = "the identity as their author has given it, all 64 digits")
  @Nullable String identity;

  @Option(names = "--because", paramLabel = "TEXT", description = "why you know them")
  @Nullable String because;

  RulesTrust(App app) {
    this.app = app;
  }

  @Override
  public Integer call() throws IOException {
    Home home = Home.of(app);
    Complaints complaints = new Complaints();
    Optional<TrustList> trusted = home.trusted(complaints);
    app.err().print(complaints.renderAll());
    Verification found =
        Verifier.verify(
            BoundedFile.read(file, SealedFile.MOST_BYTES),
            trusted.orElse(TrustList.NONE),
            app.today(),
            new Pdf());
    if (!found.broken().isEmpty() || found.rules().isEmpty()) {
      found.broken().forEach(broken -> app.err().println(file + ": " + broken.words()));
      return Exit.ALTERED.code();
    }
    return trusted.isEmpty()
        ? Exit.UNUSABLE.code()
        : trust(home, found, found.rules().get()).code();
  }

  private Exit trust(Home home, Verification found, Verification.RulesSeen rules)
      throws IOException {
    app.out().println(rules.name());
    app.out().println("  identity " + rules.identity());
    app.out().println("  known    " + rules.known().orElse("no"));
    app.say(
        "  where they say something else than ours: "
            + found.differences().size()
            + " findings (`verify` names them)");
    if (identity == null || because == null || because.isBlank()) {
      app.say(
          "Ask their author for the identity, by another way than this file, and give it with"
              + " `--identity`, and why you know them with `--because`. Nothing was written down.");
      return Exit.UNUSABLE;
    }
    if (!identity.strip().equalsIgnoreCase(rules.identity())) {
      app.err().println("that is the identity of other rules. Nothing was written down.");
      return Exit.RULES_UNKNOWN;
    }
    LocalDate today = LocalDate.now(app.clock().withZone(ZoneOffset.UTC));
    TrustList.Ruleset known = new TrustList.Ruleset(rules.identity(), because.strip(), today);
    Complaints complaints = new Complaints();
    boolean written = home.trust(before -> before.with(known), complaints);
    app.err().print(complaints.renderAll());
    if (!written) {
      return Exit.UNUSABLE;
    }
    app.out().println("known from now on");
    return Exit.PASS;
  }
}
