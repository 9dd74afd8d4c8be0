package org.mainsgate.agenda;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.mainsgate.verdict.Finding;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Reason;

/** Reads from findings what no entry settles. */
final class Matters {

  List<Matter> of(List<Finding> findings) {
    List<Matter> matters = new ArrayList<>();
    for (Finding finding : findings) {
      if (finding.outcome() == Outcome.FAIL) {
        matters.add(putRight(finding));
      } else if (finding.outcome() == Outcome.HOLD) {
        finding.holds().stream()
            .flatMap(hold -> kind(hold.reason()).stream())
            .distinct()
            .forEach(kind -> matters.add(matter(kind, finding)));
      }
    }
    return matters;
  }

  /** Whether a finding holds for more than what it waits for, and nothing says what to do. */
  static boolean isForgotten(Finding finding, List<Matter> matters) {
    return matters.stream().noneMatch(matter -> matter.finding().equals(finding))
        && finding.holds().stream().anyMatch(hold -> hold.reason() != Reason.PREREQUISITE_OPEN);
  }

  /** Nobody reads a standard for a finding that lacks an entry: it may never need the value. */
  static boolean isTooEarly(Matter matter, Finding lacking) {
    return matter.kind() == Matter.Kind.CONFIRM && matter.finding().equals(lacking);
  }

  static Matter look(Finding finding) {
    List<String> says = finding.holds().stream().map(Finding.Hold::text).toList();
    return new Matter(Matter.Kind.LOOK, finding, says);
  }

  private static Optional<Matter.Kind> kind(Reason reason) {
    return switch (reason) {
      case NOT_MET -> Optional.of(Matter.Kind.PUT_RIGHT);
      case PERSON_MUST_JUDGE -> Optional.of(Matter.Kind.JUDGE);
      case LIMIT_UNCONFIRMED -> Optional.of(Matter.Kind.CONFIRM);
      case NOT_RECORDED,
          LIST_OPEN,
          TOO_NEAR,
          IMPLAUSIBLE,
          DISAGREE,
          NOT_AS_ASKED,
          PREREQUISITE_OPEN,
          APPLICABILITY_UNKNOWN ->
          Optional.empty();
    };
  }

  private static Matter matter(Matter.Kind kind, Finding finding) {
    return switch (kind) {
      case PUT_RIGHT -> putRight(finding);
      case JUDGE -> new Matter(kind, finding, judge(finding));
      case CONFIRM, LOOK -> new Matter(kind, finding, finding.settles());
    };
  }

  /** A requirement that is not met without a remedy is told with what would settle it. */
  private static Matter putRight(Finding finding) {
    List<String> remedy = remedy(finding);
    return new Matter(
        Matter.Kind.PUT_RIGHT, finding, remedy.isEmpty() ? finding.settles() : remedy);
  }

  private static List<String> judge(Finding finding) {
    return Stream.concat(
            remedy(finding).stream(),
            Stream.of(
                "Or let a competent person judge it: `judged: {check: "
                    + finding.check().id()
                    + ", item: "
                    + finding.thing()
                    + ", ...}`"))
        .toList();
  }

  private static List<String> remedy(Finding finding) {
    return finding.remedy().isEmpty() ? List.of() : List.of(finding.remedy());
  }
}
