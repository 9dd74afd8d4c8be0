package org.mainsgate.source;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * The valid name that a mistyped one most likely stands for.
 *
 * <p>Names are compared by the number of letters left out, put in, changed or swapped with their
 * neighbour (the restricted Damerau-Levenshtein distance). Capitals and small letters are alike,
 * and so are space, hyphen and underscore.
 */
public final class NearestName {

  private static final int LONGEST = 64;

  private NearestName() {}

  /**
   * The nearest name within a third of the length of the wrong one, at least 1; of several the
   * first.
   */
  public static Optional<String> of(String wrong, Collection<String> valid) {
    if (wrong.isEmpty() || wrong.length() > LONGEST) {
      return Optional.empty();
    }
    String typed = alike(wrong);
    int best = Math.max(1, typed.length() / 3) + 1;
    String nearest = null;
    for (String name : valid) {
      if (Math.abs(name.length() - typed.length()) < best) {
        int distance = distance(typed, alike(name));
        if (distance < best) {
          best = distance;
          nearest = name;
        }
      }
    }
    return Optional.ofNullable(nearest);
  }

  /** So many of the names, the most alike ones, in their own order. */
  static List<String> some(String wrong, Collection<String> valid, int number) {
    String typed = alike(wrong.length() > LONGEST ? wrong.substring(0, LONGEST) : wrong);
    Map<String, Integer> distances = new LinkedHashMap<>();
    valid.forEach(name -> distances.put(name, distance(typed, alike(name))));
    Set<String> nearest =
        distances.entrySet().stream()
            .sorted(Map.Entry.comparingByValue())
            .limit(number)
            .map(Map.Entry::getKey)
            .collect(Collectors.toSet());
    return valid.stream().filter(nearest::contains).toList();
  }

  private static String alike(String name) {
    return name.toLowerCase(Locale.ROOT).replace(' ', '_').replace('-', '_');
  }

  private static int distance(String a, String b) {
    int[] twoAbove = new int[b.length() + 1];
    int[] above = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      above[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
        row[j] = Math.min(Math.min(above[j] + 1, row[j - 1] + 1), above[j - 1] + change);
        boolean swapped =
            i > 1
                && j > 1
                && a.charAt(i - 1) == b.charAt(j - 2)
                && a.charAt(i - 2) == b.charAt(j - 1);
        if (swapped) {
          row[j] = Math.min(row[j], twoAbove[j - 2] + 1);
        }
      }
      int[] free = twoAbove;
      twoAbove = above;
      above = row;
      row = free;
    }
    return above[b.length()];
  }
}
