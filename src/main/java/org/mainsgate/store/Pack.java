package org.mainsgate.store;

import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;

/**
 * Files taken out of a bench to go somewhere else: all that the verdict on one instrument needs.
 *
 * @param files the bytes by path, as in the bench's folder, in the order of their paths
 */
public record Pack(Map<String, byte[]> files) {

  /** Keeps the files in the order of their paths. */
  public Pack {
    files = Collections.unmodifiableMap(new TreeMap<>(files));
  }
}
