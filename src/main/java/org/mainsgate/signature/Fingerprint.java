package org.mainsgate.signature;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.Locale;

/**
 * What tells one key from all others: SHA-256 over its certificate.
 *
 * @param hex 64 digits, in lower case
 */
public record Fingerprint(String hex) {
  private static final int GROUPS = 10;

  /** Refuses what is no such number. */
  public Fingerprint {
    if (!hex.matches("[0-9a-f]{64}")) {
      throw new IllegalArgumentException("no fingerprint: " + hex);
    }
  }

  /** The fingerprint of these bytes. */
  public static Fingerprint of(byte[] certificate) {
    try {
      byte[] hash = MessageDigest.getInstance("SHA-256").digest(certificate);
      return new Fingerprint(HexFormat.of().formatHex(hash));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  /**
   * The first 160 bits for the telephone: ten groups of five digits, each a number up to 65535. To
   * find another key with the same groups is beyond anybody's means.
   */
  public String spoken() {
    StringBuilder groups = new StringBuilder();
    for (int i = 0; i < GROUPS; i++) {
      int group = Integer.parseInt(hex.substring(4 * i, 4 * i + 4), 16);
      groups.append(i == 0 ? "" : " ").append(String.format(Locale.ROOT, "%05d", group));
    }
    return groups.toString();
  }

  /** Whether a person heard this fingerprint, by its groups or in full. */
  public boolean isHeardAs(String heard) {
    String digits = heard.replaceAll("[\\s.:-]", "").toLowerCase(Locale.ROOT);
    return equal(digits, spoken().replace(" ", "")) || equal(digits, hex);
  }

  private static boolean equal(String one, String other) {
    return MessageDigest.isEqual(
        one.getBytes(StandardCharsets.UTF_8), other.getBytes(StandardCharsets.UTF_8));
  }
}
