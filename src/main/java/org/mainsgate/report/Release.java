package org.mainsgate.report;

/** Which release of the program this is. */
public final class Release {
  /** The version, as in {@code pom.xml}; a test holds them together. */
  public static final String VERSION = "0.1.0";

  private Release() {}
}
