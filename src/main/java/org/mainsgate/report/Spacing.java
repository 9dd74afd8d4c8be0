package org.mainsgate.report;

import java.util.regex.Pattern;

/** The spaces at which no line may break. */
final class Spacing {

  static final char BOUND = '\u00a0';

  private static final Pattern BEFORE_UNIT =
      Pattern.compile(
          "(?<=[0-9]) (?=(?:[mkM]?Ω|[mk]?A|[mk]?V|k?VA|k?W|mm²|c?m|Hz|°C|%)(?![\\p{L}\\p{N}²]))");

  private Spacing() {}

  /** The text with each number bound to its unit. */
  static String bound(String text) {
    return BEFORE_UNIT.matcher(text).replaceAll(String.valueOf(BOUND));
  }
}
