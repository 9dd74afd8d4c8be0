package org.mainsgate.source;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/**
 * The complaints about the texts of one run, collected so that a person sees all of them at once.
 *
 * <p>At most 100 of a file are kept, the first ones made; the rest are counted. For one thread.
 */
public final class Complaints {

  private static final int KEPT_OF_A_FILE = 100;

  private static final int READABLE = 24;
  private static final int FEW = 8;

  private final Map<String, SourceText> sources = new HashMap<>();
  private final Map<String, Map<Integer, String>> lines = new HashMap<>();
  private final List<Complaint> kept = new ArrayList<>();
  private final Map<String, Integer> made = new TreeMap<>();

  /** Makes the lines of a text known, so that complaints about it can show them. */
  public void reading(SourceText source) {
    sources.put(source.name(), source);
    lines.remove(source.name());
  }

  /** Complains without saying what would be right. */
  public void add(Position at, String what) {
    add(at, what, "", "");
  }

  /**
   * Complains.
   *
   * @param right what would be right, to be read after the word "expected"; may be empty
   */
  public void add(Position at, String what, String right) {
    add(at, what, right, "");
  }

  /**
   * Complains.
   *
   * @param what what is wrong: lower case, no final period, the person's own words in backticks
   * @param right what would be right, to be read after the word "expected"; may be empty
   * @param nearest the nearest valid name, without backticks; may be empty
   */
  public void add(Position at, String what, String right, String nearest) {
    if (made.merge(at.file(), 1, Integer::sum) <= KEPT_OF_A_FILE) {
      kept.add(new Complaint(at, line(at), what, right, nearest));
    }
  }

  /** Complains about a node, where it starts. */
  public void add(Node node, String what, String right) {
    add(node.at(), what, right, "");
  }

  /** Takes over what was complained of elsewhere. */
  public void addAll(Complaints others) {
    kept.addAll(others.kept);
    others.made.forEach((file, count) -> made.merge(file, count, Integer::sum));
  }

  /**
   * Complains about a name that nobody knows, with the list of valid names and the nearest of them.
   *
   * @param thing what the name should be the name of, such as {@code field}
   */
  public void addUnknown(Position at, String thing, String wrong, Collection<String> valid) {
    if (made.getOrDefault(at.file(), 0) >= KEPT_OF_A_FILE) {
      // It is only counted: to compare it with thousands of names would be for nothing.
      add(at, "");
      return;
    }
    String right = valid.isEmpty() ? "no " + thing + " here" : among(wrong, valid);
    add(
        at,
        "unknown " + thing + " " + Visible.quoted(wrong),
        right,
        NearestName.of(wrong, valid).orElse(""));
  }

  /** All names where they can be read at a glance; of more than that the most alike. */
  private static String among(String wrong, Collection<String> valid) {
    if (valid.size() <= READABLE) {
      return oneOf(valid);
    }
    String few =
        NearestName.some(wrong, valid, FEW).stream()
            .map(name -> "`" + name + "`")
            .collect(Collectors.joining(", "));
    return "one of " + valid.size() + ", such as " + few;
  }

  /** The names in backticks, in their order, to be read after the word "expected". */
  public static String oneOf(Collection<String> names) {
    String list = names.stream().map(name -> "`" + name + "`").collect(Collectors.joining(", "));
    return names.size() == 1 ? list : "one of " + list;
  }

  public boolean isEmpty() {
    return made.isEmpty();
  }

  /** How many complaints were made, those that were not kept included. */
  public int count() {
    return made.values().stream().mapToInt(Integer::intValue).sum();
  }

  /** The complaints that were kept, by file, line and column. */
  public List<Complaint> sorted() {
    return kept.stream().sorted().toList();
  }

  /** All complaints as text, by file, line and column; empty if there are none. */
  public String renderAll() {
    StringBuilder out = new StringBuilder();
    Map<String, List<Complaint>> byFile =
        kept.stream()
            .sorted()
            .collect(Collectors.groupingBy(c -> c.at().file(), TreeMap::new, Collectors.toList()));
    byFile.forEach(
        (file, complaints) -> {
          complaints.forEach(complaint -> out.append(complaint.render()));
          int more = made.getOrDefault(file, 0) - complaints.size();
          if (more > 0) {
            out.append(Visible.text(file)).append(": and ").append(more).append(" more\n");
          }
        });
    return out.toString();
  }

  private String line(Position at) {
    SourceText source = sources.get(at.file());
    if (source == null || at.line() > source.lines()) {
      return "";
    }
    // One copy of a line for all complaints about it: a hostile file may be one long line.
    return lines
        .computeIfAbsent(at.file(), file -> new HashMap<>())
        .computeIfAbsent(at.line(), source::line);
  }
}
