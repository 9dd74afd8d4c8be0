package org.mainsgate.store;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** A file of the bench as it was read: its path inside the bench's folder, and its bytes. */
public final class StoredFile {
  private final String path;
  private final byte[] bytes;
  private final String sha256;

  /** The bytes are owned by the new object. */
  StoredFile(String path, byte[] bytes) {
    this.path = path;
    this.bytes = bytes;
    this.sha256 = sha256(bytes);
  }

  /** The path inside the bench's folder, with `/` between its parts. */
  public String path() {
    return path;
  }

  /** A copy of the bytes. */
  public byte[] bytes() {
    return bytes.clone();
  }

  /** SHA-256 of the bytes in lower-case hex. */
  public String sha256() {
    return sha256;
  }

  /** SHA-256 in lower-case hex. */
  static String sha256(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  @Override
  public String toString() {
    return path;
  }
}
