package org.mainsgate.seal;

/**
 * Something about a file that must not be.
 *
 * @param rule which rule it breaks: {@code bytes}, {@code revision}, {@code later}, {@code record},
 *     {@code content}, {@code signature} or {@code page}
 * @param words what is wrong, for the person who got the file
 */
public record Broken(String rule, String words) {}
