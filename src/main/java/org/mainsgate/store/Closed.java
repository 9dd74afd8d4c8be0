package org.mainsgate.store;

/**
 * A visit that has just been closed.
 *
 * @param visit its id
 * @param path the closed file, inside the bench's folder
 * @param hash SHA-256 of its bytes in lower-case hex: what the next visit names, and what a person
 *     can write down elsewhere
 */
public record Closed(String visit, String path, String hash) {}
