package org.mainsgate.agenda;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Nature;
import org.mainsgate.ruleset.MeterKind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;

/**
 * The text of the file of a new bench: what a person has said, and as comments what is still to be
 * said. Whatever is needed and was not said is left out, so that the program asks for it.
 *
 * @param name the bench's short name
 * @param title its name for people
 * @param zone its time zone
 * @param profile the rules to work under
 * @param by a person's initials
 * @param person that person's name
 * @param competence that person's competence, in own words
 */
public record BenchDraft(
    String name,
    Optional<String> title,
    Optional<String> zone,
    Optional<String> profile,
    Optional<String> by,
    Optional<String> person,
    Optional<String> competence) {

  /** The line that keeps the bytes of a bench as they are, for {@code .gitattributes}. */
  public static final String ATTRIBUTES = "* -text";

  /**
   * The text of the file.
   *
   * @param profiles the names of the profiles that can be chosen
   */
  public String text(Rules rules, List<String> profiles) {
    Commented text = new Commented();
    text.comment(0, "A bench: the place, its people and its meters. Where a line begins with `# `,")
        .comment(0, "take that away and write what is so; `check` says what is still missing.")
        .line("format: 1")
        .line("bench: " + name);
    said(text, 0, "title", title.map(Commented::quoted), "what this place is, in a few words");
    said(text, 0, "zone", zone, "Europe/London");
    said(text, 0, "profile", profile, String.join(" | ", profiles));
    text.line("").comment(0, "The place itself:").line("site:");
    for (Property property : rules.vocabulary().of("bench")) {
      text.comment(2, caution(property));
      text.open(2, property.name() + ": " + site(property), property.title());
    }
    people(text);
    meters(text, rules.meterKinds());
    return text.toString();
  }

  private static void said(
      Commented text, int indent, String key, Optional<String> value, String hint) {
    value.ifPresentOrElse(
        given -> text.line(" ".repeat(indent) + key + ": " + given),
        () -> text.open(indent, key + ": " + hint));
  }

  private static String caution(Property property) {
    String caution = property.heading().caution();
    return caution.isEmpty() ? "" : "caution: " + caution;
  }

  private static String site(Property property) {
    if (property instanceof Property.Quantity quantity && quantity.nature() == Nature.MEASURED) {
      return "{value: " + Form.value(property) + ", on: YEAR-MONTH-DAY}";
    }
    return property instanceof Property.Quantity quantity && quantity.nature() == Nature.VARIES
        ? Form.value(property) + " +.../-... %"
        : Form.value(property);
  }

  private void people(Commented text) {
    text.line("").comment(0, "Everybody who writes or judges, by initials:").line("people:");
    if (by.isEmpty()) {
      text.open(2, "AB:")
          .open(2, "  name: as you want it printed")
          .open(2, "  competence: in your own words");
      return;
    }
    text.line("  " + Commented.quoted(by.get()) + ":");
    said(text, 4, "name", person.map(Commented::quoted), "as you want it printed");
    said(text, 4, "competence", competence.map(Commented::quoted), "in your own words");
  }

  private static void meters(Commented text, Map<String, MeterKind> kinds) {
    text.line("")
        .comment(
            0,
            "The meters. Where the accuracies of one are not known, those of its kind are taken;"
                + " else they stand beside `from`: `functions: {resistance: [{to: 1.999 Ω, digit:"
                + " 0.001 Ω, accuracy: 2 % + 3 digits}]}`.")
        .line("meters:");
    kinds.values().stream()
        .filter(kind -> !kind.name().equals(MeterKind.UNKNOWN))
        .forEach(
            kind ->
                text.open(
                    2,
                    kind.name().replace('_', '-')
                        + ": {title: make and type, kind: "
                        + kind.name()
                        + ", history: [{from: YEAR-MONTH-DAY}]}"));
    text.line("")
        .comment(
            0, "How the bench measures a quantity each time, so that a reading need not say it:")
        .line("methods:")
        .open(
            2,
            "earth: {of: earth_resistance, meter: low-ohm-tester, nulled: yes, test_current: ... A,"
                + " measured_from: plug_pin}");
  }
}
