package org.mainsgate.seal;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.mainsgate.report.JsonText;
import org.mainsgate.report.Lines;
import org.mainsgate.report.Released;
import org.mainsgate.report.Terms;
import org.mainsgate.seal.Verification.Difference;
import org.mainsgate.seal.Verification.Judgement;
import org.mainsgate.seal.Verification.Signer;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Verdict;

/** What is said of a sealed file: for a person at 80 columns, and for other programs. */
public final class VerificationText {
  private static final int WIDTH = 21;

  private VerificationText() {}

  /** For a person. */
  public static String screen(String file, Verification found, List<String> later) {
    Lines out = new Lines();
    out.add(0, file).blank();
    unchanged(out, found);
    if (found.broken().isEmpty()) {
      found.terms().ifPresent(terms -> madeOut(out, terms, found.instrument()));
      signers(out, found);
      rules(out, found);
      page(out, found);
      verdicts(out, found);
      currency(out, found, later);
    }
    out.blank()
        .add(
            0,
            "Readings, and how good a meter is, are the signer's word. Local codes and a qualified"
                + " person have the last word.");
    return out.toString();
  }

  private static void answer(Lines out, String question, String answer) {
    out.add(0, (question + " ".repeat(WIDTH)).substring(0, WIDTH), WIDTH, answer);
  }

  private static void unchanged(Lines out, Verification found) {
    if (found.broken().isEmpty()) {
      answer(out, "unchanged", "yes: not a byte is other than when it was signed");
      return;
    }
    answer(out, "unchanged", "NO. Do not rely on anything that this file says.");
    found.broken().stream().limit(8).forEach(broken -> answer(out, "", "- " + broken.words()));
  }

  private static void madeOut(Lines out, Terms terms, Optional<String> instrument) {
    answer(
        out,
        "record",
        terms.number() + " of " + terms.tag() + ", " + terms.on() + ": " + terms.purpose().words());
    instrument.ifPresent(
        what -> answer(out, "instrument", what + "; compare it with what is in front of you"));
    terms.to().ifPresent(to -> answer(out, "made out to", to));
  }

  private static void signers(Lines out, Verification found) {
    for (Signer signer : found.signatures()) {
      boolean made = signer.field().equals(Layout.CERTIFY);
      answer(
          out,
          made ? "signed by" : "accepted by",
          signer.certified().name() + ", " + signer.claimed() + " by their own clock");
      signer.stamped().ifPresent(stamp -> answer(out, "", "stamped " + stamp));
      answer(out, "  key", signer.certified().fingerprint().spoken());
      answer(
          out,
          "  known",
          signer
              .known()
              .map(name -> "yes: " + name)
              .orElse(
                  "NO. It proves the same key, not this person: compare the groups above with the owner, then `identity trust`"));
    }
    int count = found.acceptances();
    answer(
        out,
        "acceptances",
        count == 0
            ? "none"
            : count + (count == 1 ? " person has" : " people have") + " signed for knowing it");
    answer(out, "", "(one that was taken off again leaves no trace)");
  }

  private static void rules(Lines out, Verification found) {
    found
        .rules()
        .ifPresent(
            rules -> {
              answer(out, "rules", rules.name());
              answer(
                  out,
                  "  known",
                  rules
                      .known()
                      .map(why -> "yes: " + why)
                      .orElse(
                          "NO. Nobody here knows these rules; a pass under them says nothing."));
              if (!rules.identity().isEmpty()) {
                answer(out, "  identity", rules.identity());
              }
            });
  }

  private static void page(Lines out, Verification found) {
    answer(
        out,
        "pages",
        switch (found.page()) {
          case SAME -> "say what the record says: made again, they are the same";
          case OTHER_RELEASE ->
              "were made by another release of the program; the findings and the words that decide are those of the record";
          case DIFFERS -> "DO NOT say what the record says";
          case UNKNOWN -> "could not be made again";
        });
  }

  private static void verdicts(Lines out, Verification found) {
    answer(
        out,
        "under its own rules",
        found.theirs().map(VerificationText::verdict).orElse("can't be judged"));
    answer(
        out,
        "under our rules",
        found.ours().map(VerificationText::verdict).orElse("can't be judged"));
    if (!found.verdict().equals(Optional.of(Verdict.PASS))) {
      answer(out, "", "NOT FOR CONNECTION");
    } else if (found.theirs().filter(said -> !said.uses()).isPresent()) {
      answer(out, "", "FIRST CONNECTION ONLY, supervised; no word about use");
    }
    released(out, found.released());
    List<Difference> differences = found.differences();
    differences.stream()
        .limit(12)
        .forEach(
            difference ->
                answer(
                    out,
                    "  differs",
                    difference.title()
                        + ": theirs "
                        + word(difference.theirs())
                        + ", ours "
                        + word(difference.ours())));
    if (differences.size() > 12) {
      answer(out, "", "and " + (differences.size() - 12) + " more; `--json` has all");
    }
  }

  private static String verdict(Judgement said) {
    return said.verdict().word().toUpperCase(Locale.ROOT)
        + ", "
        + said.stage()
        + ", "
        + said.under();
  }

  /**
   * Readings age, so a later day can be worse; what is better on another day counts for nothing.
   */
  private static String today(Judgement now, Verification found) {
    int other = found.verdict().map(then -> now.verdict().compareTo(then)).orElse(0);
    if (other == 0) {
      return "the same";
    }
    return other > 0
        ? now.verdict().word().toUpperCase(Locale.ROOT)
            + ": its readings are too old by now; do not go by it, look and measure again"
        : "its day is not today; it says nothing better of today";
  }

  /** A pass that rests on somebody's judgement holds within its limits, so they stand beside it. */
  private static void released(Lines out, List<Released> released) {
    List<String> limits = Released.limits(released);
    if (!limits.isEmpty()) {
      answer(out, "", "RESTRICTED. Only: " + String.join("; ", limits));
    }
    released.forEach(one -> answer(out, "  by judgement", one.words()));
  }

  private static String word(Optional<Outcome> outcome) {
    return outcome.map(Outcome::word).orElse("not asked");
  }

  private static void currency(Lines out, Verification found, List<String> later) {
    found.now().ifPresent(now -> answer(out, "as of today", today(now, found)));
    found
        .terms()
        .ifPresent(
            terms ->
                answer(
                    out,
                    "judged as of",
                    terms.on()
                        + "; a record of a later date, or of the same date with a higher number, takes its place"));
    later.forEach(line -> answer(out, "on the bench", line));
    found.heads().forEach(head -> answer(out, "latest visit", head));
    found.notes().forEach(note -> answer(out, "note", note));
  }

  /** For other programs. */
  public static String json(Verification found, List<String> later, int exit) {
    JsonText out = new JsonText();
    out.open().number("format", 1).number("exit", exit);
    out.list(
        "broken",
        found.broken(),
        broken -> out.open().text("rule", broken.rule()).text("words", broken.words()).close());
    out.name("record");
    found.terms().ifPresentOrElse(terms -> record(out, terms), () -> out.open().close());
    out.list("signatures", found.signatures(), signer -> signer(out, signer));
    out.number("acceptances", found.acceptances());
    out.name("rules").open();
    found
        .rules()
        .ifPresent(
            rules ->
                out.text("name", rules.name())
                    .text("identity", rules.identity())
                    .text("known", rules.known().orElse("")));
    out.close();
    out.text("page", found.page().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    out.text("theirs", found.theirs().map(said -> said.verdict().word()).orElse(""));
    out.text("ours", found.ours().map(said -> said.verdict().word()).orElse(""));
    out.text("today", found.now().map(said -> said.verdict().word()).orElse(""));
    out.list(
        "differences",
        found.differences(),
        difference ->
            out.open()
                .text("title", difference.title())
                .text("theirs", word(difference.theirs()))
                .text("ours", word(difference.ours()))
                .close());
    out.list("released", found.released(), one -> released(out, one));
    out.list("heads", found.heads(), out::text);
    out.list("later", later, out::text);
    out.list("notes", found.notes(), out::text);
    out.close();
    return out.toString();
  }

  private static void released(JsonText out, Released one) {
    out.open()
        .text("title", one.title())
        .text("only", one.judged().restriction())
        .text("by", one.judged().by())
        .text("competence", one.judged().competence())
        .text("on", one.judged().on().toString())
        .text("because", one.judged().because())
        .close();
  }

  private static void record(JsonText out, Terms terms) {
    out.open()
        .text("tag", terms.tag())
        .number("number", terms.number())
        .text("on", terms.on().toString())
        .text("stage", terms.stage())
        .text("purpose", terms.purpose().word())
        .text("to", terms.to().orElse(""))
        .text("program", terms.program())
        .close();
  }

  private static void signer(JsonText out, Signer signer) {
    out.open()
        .text("field", signer.field())
        .text("name", signer.certified().name())
        .text("fingerprint", signer.certified().fingerprint().hex())
        .text("claimed", signer.claimed().toString())
        .text("stamped", signer.stamped().orElse(""))
        .text("known", signer.known().orElse(""))
        .close();
  }
}
