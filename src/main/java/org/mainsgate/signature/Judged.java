package org.mainsgate.signature;

import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * What is to be said of a signature.
 *
 * @param faults what is wrong with it, in plain words; empty if nothing
 * @param signer whose certificate it carries, if that can be told
 * @param stamped when it was at the latest, by the word of whoever stamped it
 */
public record Judged(List<String> faults, Optional<Certified> signer, Optional<Stamped> stamped) {

  /** Keeps the list as it is. */
  public Judged {
    faults = List.copyOf(faults);
  }

  /**
   * A time that somebody else has signed.
   *
   * @param at the time
   * @param by whose certificate it carries
   */
  public record Stamped(Instant at, Certified by) {}
}
