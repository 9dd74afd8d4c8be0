package org.mainsgate.report;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.mainsgate.report.Terms.Purpose;
import org.mainsgate.report.Terms.Saying;
import org.mainsgate.source.CalendarDate;
import org.mainsgate.verdict.Verdict;

/** What is missing before an instrument may change hands. */
final class Missing {
  private static final List<String> PLUG = List.of("cut-off", "locked");
  private static final List<String> SELLER = List.of("trade", "private");
  private static final List<String> USE = List.of("display", "bench", "project");

  private final Dossier dossier;
  private final Terms terms;

  Missing(Dossier dossier, Terms terms) {
    this.dossier = dossier;
    this.terms = terms;
  }

  private boolean passes() {
    return dossier.assessment().verdict() == Verdict.PASS;
  }

  private boolean uses() {
    return dossier.assessment().stage().uses();
  }

  /** Why it may not be handed over so, and what is missing; empty if it may. */
  List<String> complaints() {
    List<String> all = new ArrayList<>();
    if (terms.purpose() == Purpose.LENT) {
      lending(all);
    }
    if (terms.purpose() == Purpose.SOLD) {
      oneOf(all, Saying.SELLER, SELLER);
      oneOf(all, Saying.USE, USE);
    }
    if (terms.purpose() == Purpose.RETURNED) {
      needs(all, Saying.TELLS);
      returning(all);
    }
    if (terms.purpose() != Purpose.RECORD && terms.to().filter(name -> !name.isBlank()).isEmpty()) {
      all.add("say who gets it: `--to NAME`");
    }
    if ((terms.purpose() == Purpose.SOLD || terms.purpose() == Purpose.RETURNED) && !passes()) {
      oneOf(all, Saying.PLUG, PLUG);
      needs(all, Saying.PLUG_BY);
    }
    days(all);
    return all;
  }

  /** What comes back passes on what was seen since, not on what was seen before it went. */
  private void returning(List<String> all) {
    if (terms.wentOut().isEmpty()) {
      all.add("name the record that it went out with: `--went-out FILE`");
      return;
    }
    Terms.WentOut out = terms.wentOut().get();
    if (out.on().isAfter(terms.on())) {
      all.add("it went out on " + out.on() + ", after the day of this record, " + terms.on());
    }
    if (passes() && Set.copyOf(out.heads()).equals(Set.copyOf(dossier.heads()))) {
      all.add(
          "nothing was looked at since it went out: look at it, measure earth and insulation, close"
              + " that visit, then hand it over");
    }
  }

  /** No day that is promised may lie further ahead than readings hold, or behind. */
  private void days(List<String> all) {
    for (Saying saying : List.of(Saying.UNTIL, Saying.NEXT)) {
      terms
          .said(saying)
          .filter(CalendarDate.Check::isDate)
          .map(LocalDate::parse)
          .filter(
              day ->
                  !day.isAfter(terms.on()) || day.isAfter(terms.on().plusMonths(Handover.MONTHS)))
          .ifPresent(
              day ->
                  all.add(
                      option(saying)
                          + " "
                          + day
                          + ": expected a day after "
                          + terms.on()
                          + ", and at most twelve months later: readings hold no longer"));
    }
    if (passes() && !uses() && terms.said(Saying.NEXT).isPresent()) {
      all.add("`--next` has no meaning for a first connection: its readings hold for days only");
    }
  }

  private void lending(List<String> all) {
    if (!passes()) {
      all.add(
          "only what passes is lent; this "
              + (dossier.assessment().verdict() == Verdict.FAIL ? "fails" : "holds"));
    } else if (!uses()) {
      all.add(
          "a pass of the "
              + dossier.setting().stage().title()
              + " says nothing about use; lend on a pass of another stage, with `--stage`");
    }
    needs(all, Saying.UNTIL);
    needs(all, Saying.PLACE);
    needs(all, Saying.USER);
    if (passes() && !Released.in(dossier.assessment()).isEmpty()) {
      needs(all, Saying.COMPETENT);
    }
  }

  private void needs(List<String> all, Saying saying) {
    if (terms.said(saying).filter(text -> !text.isBlank()).isEmpty()) {
      all.add("say " + saying.words() + ": " + option(saying));
    }
  }

  private void oneOf(List<String> all, Saying saying, List<String> words) {
    if (terms.said(saying).filter(words::contains).isEmpty()) {
      all.add(
          "say " + saying.words() + ": " + option(saying) + " with " + String.join(" or ", words));
    }
  }

  private static String option(Saying saying) {
    return "`--" + saying.key().replace('_', '-') + "`";
  }
}
