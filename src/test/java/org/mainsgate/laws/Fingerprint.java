package org.mainsgate.laws;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Random;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.ruleset.Rules;

/** One number for the findings on many records, to be compared between two machines. */
public final class Fingerprint {
  private static final int RECORDS = 60;

  private Fingerprint() {}

  /** SHA-256 over the findings on some random records, in hex. */
  public static String take() {
    try {
      MessageDigest sha = MessageDigest.getInstance("SHA-256");
      for (long seed = 0; seed < RECORDS; seed++) {
        for (Rules rules : Rulebook.all()) {
          Random random = new Random(seed * 0x9E3779B97F4A7C15L);
          Slice slice = Slice.random(rules, random);
          InstrumentRecord record = RandomRecord.of(slice, random, seed % 2 == 0);
          sha.update(Laws.json(slice.rules(), record).getBytes(UTF_8));
        }
      }
      return HexFormat.of().formatHex(sha.digest());
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java has SHA-256", e);
    }
  }

  /** Prints it, for a test in another process. */
  public static void main(String[] args) {
    System.out.println(take());
  }
}
