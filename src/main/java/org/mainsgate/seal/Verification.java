package org.mainsgate.seal;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.mainsgate.report.Released;
import org.mainsgate.report.Terms;
import org.mainsgate.signature.Certified;
import org.mainsgate.verdict.Outcome;
import org.mainsgate.verdict.Verdict;

/**
 * What is to be said of a file that claims to be a sealed record. The answers stand apart: a file
 * that nobody changed can be signed by a stranger, under rules that are nobody's, over readings
 * that are the signer's word alone.
 *
 * @param broken what must not be; where there is anything, nothing else is to be believed
 * @param terms what it is made out for, if that can be read
 * @param instrument what the record says that it is of, so that it can be held against the thing
 * @param signatures who signed, the maker of the record first
 * @param rules what it was judged under
 * @param page whether the pages say what the record says
 * @param theirs the verdict that follows from the record and its own rules
 * @param ours the verdict of the same record under the rules of this program
 * @param now the same as {@code ours} as of the day on which it is asked: readings age
 * @param differences the findings that differ between the two
 * @param released what passes under the record's own rules by a person's judgement
 * @param heads the hashes of the latest closed visits in it
 * @param notes what else its reader should know
 */
public record Verification(
    List<Broken> broken,
    Optional<Terms> terms,
    Optional<String> instrument,
    List<Signer> signatures,
    Optional<RulesSeen> rules,
    PageSeen page,
    Optional<Judgement> theirs,
    Optional<Judgement> ours,
    Optional<Judgement> now,
    List<Difference> differences,
    List<Released> released,
    List<String> heads,
    List<String> notes) {

  /** Keeps the lists as they are. */
  public Verification {
    broken = List.copyOf(broken);
    signatures = List.copyOf(signatures);
    differences = List.copyOf(differences);
    released = List.copyOf(released);
    heads = List.copyOf(heads);
    notes = List.copyOf(notes);
  }

  /**
   * Somebody who signed.
   *
   * @param field which field they signed
   * @param certified what their certificate says
   * @param claimed the time that they claim
   * @param stamped the time that somebody else stamped, and who
   * @param known as whom their key is known here; empty if it is not
   */
  public record Signer(
      String field,
      Certified certified,
      Instant claimed,
      Optional<String> stamped,
      Optional<String> known) {}

  /**
   * The rules of a record.
   *
   * @param identity SHA-256 over what they are made of
   * @param name profile and edition, as they call themselves
   * @param known why they are known here; empty if they are not
   */
  public record RulesSeen(String identity, String name, Optional<String> known) {}

  /** Whether the pages say what the record says. */
  public enum PageSeen {
    /** The pages that follow from the record are these, to the byte or to the object. */
    SAME,
    /**
     * Another release made them; its findings and the words that decide are those of the record.
     */
    OTHER_RELEASE,
    /** They do not. */
    DIFFERS,
    /** It could not be told. */
    UNKNOWN
  }

  /**
   * A verdict.
   *
   * @param verdict the verdict
   * @param stage its stage, as people call it
   * @param uses whether that stage speaks of use at all
   * @param under the rules
   */
  public record Judgement(Verdict verdict, String stage, boolean uses, String under) {}

  /**
   * A finding that two sets of rules see differently.
   *
   * @param title the check and the thing
   * @param theirs what the record's rules say, if they ask
   * @param ours what those of this program say, if they ask
   */
  public record Difference(String title, Optional<Outcome> theirs, Optional<Outcome> ours) {}

  /** How many people have accepted it. */
  public int acceptances() {
    return Math.max(0, signatures.size() - 1);
  }

  /** Whether the maker's key is known here. */
  public boolean isSignerKnown() {
    return !signatures.isEmpty() && signatures.get(0).known().isPresent();
  }

  /** The worse of the two verdicts, if there is one. */
  public Optional<Verdict> verdict() {
    return java.util.stream.Stream.of(theirs, ours)
        .flatMap(Optional::stream)
        .map(Judgement::verdict)
        .reduce((one, other) -> one.compareTo(other) >= 0 ? one : other);
  }
}
