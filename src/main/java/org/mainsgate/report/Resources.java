package org.mainsgate.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/** What ships with the program for its reports. */
final class Resources {

  private Resources() {}

  /** Opens a resource by its path from the root of the class path. */
  static InputStream open(String path) {
    InputStream found = Resources.class.getResourceAsStream(path);
    if (found == null) {
      throw new IllegalStateException("missing from the program: " + path);
    }
    return found;
  }

  static byte[] read(String path) {
    try (InputStream in = open(path)) {
      return in.readAllBytes();
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
  }
}
