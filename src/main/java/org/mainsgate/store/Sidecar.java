package org.mainsgate.store;

import java.nio.charset.StandardCharsets;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The file beside a closed visit that says what its bytes were, as {@code sha256sum -c} reads it.
 *
 * @param hash SHA-256 in lower-case hex
 * @param name the name of the visit's file
 */
record Sidecar(String hash, String name) {
  static final String ENDING = ".sha256";
  private static final Pattern LINE = Pattern.compile("([0-9a-f]{64}) [ *]([^/\\r\\n]+)\\r?\\n?");

  /** What the bytes say, if they are one such line. */
  static Optional<Sidecar> parse(byte[] bytes) {
    Matcher line = LINE.matcher(new String(bytes, StandardCharsets.UTF_8));
    return line.matches()
        ? Optional.of(new Sidecar(line.group(1), line.group(2)))
        : Optional.empty();
  }

  byte[] bytes() {
    return (hash + "  " + name + "\n").getBytes(StandardCharsets.UTF_8);
  }
}
