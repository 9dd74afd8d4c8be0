package org.mainsgate.report;

import java.util.List;
import org.mainsgate.verdict.Assessment;
import org.mainsgate.verdict.Judged;

/**
 * What passes by the judgement of a person, and not by a rule: whoever relies on the pass has to
 * know who judged, and within which limits.
 *
 * @param title the check and the thing
 * @param judged the judgement
 */
public record Released(String title, Judged judged) {

  /** All that a person's judgement released in an assessment, in the order of the checks. */
  public static List<Released> in(Assessment assessment) {
    return assessment.findings().stream()
        .flatMap(
            finding ->
                finding.judged().stream()
                    .map(judged -> new Released(Phrases.title(finding), judged)))
        .toList();
  }

  /** What the judgements are limited to, each limit once. */
  public static List<String> limits(List<Released> all) {
    return all.stream()
        .map(released -> released.judged().restriction())
        .filter(text -> !text.isEmpty())
        .distinct()
        .toList();
  }

  /** The whole of it in words: what, the limit, who, when, why. */
  public String words() {
    String limit = judged.restriction().isEmpty() ? "" : ". Only: " + judged.restriction();
    String competence = judged.competence().isEmpty() ? "" : " (" + judged.competence() + ")";
    return title
        + limit
        + ". Judged by "
        + judged.by()
        + competence
        + ", "
        + judged.on()
        + ": "
        + judged.because();
  }
}
