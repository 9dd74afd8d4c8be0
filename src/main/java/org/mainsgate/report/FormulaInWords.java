package org.mainsgate.report;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.mainsgate.ruleset.Kind;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;

/**
 * Formulas read aloud: each name in the words of the trade, each value of an observation in double
 * quotes, each named number in single ones.
 *
 * <p>It is a reading for people, not a second meaning: what counts is the formula, which is printed
 * beside it.
 */
final class FormulaInWords {
  private static final Pattern TOKEN =
      Pattern.compile(
          "[A-Za-z_][A-Za-z0-9_]*(?:\\.[A-Za-z_][A-Za-z0-9_]*)*"
              + "|[0-9]+[A-Za-z]+|[0-9]+(?:\\.[0-9]+)?"
              + "|\\.[A-Za-z_][A-Za-z0-9_]*|<=|>=|[<>()+*/×÷−≤≥,:-]|[^\\s()+*/<>,:.-]+");

  private static final Map<String, String> SIGNS =
      Map.of("*", "×", "/", "÷", "-", "−", "<=", "≤", ">=", "≥");

  private static final Map<String, String> WORDS =
      Map.of(
          "highest", "the highest of",
          "lowest", "the lowest of",
          "nominal", "the nominal",
          "min", "the smaller of",
          "max", "the greater of",
          "sqrt", "the square root of",
          "ln", "the logarithm of",
          "exp2", "two to the power of",
          "implies", "implies that");

  private final Rules rules;
  private final Map<String, String> named;

  /**
   * A reader of formulas under these rules.
   *
   * @param named the titles of the named steps and statements, by name
   */
  FormulaInWords(Rules rules, Map<String, String> named) {
    this.rules = rules;
    this.named = Map.copyOf(named);
  }

  /** The formula in words. */
  String of(String formula) {
    Deque<String> tokens = new ArrayDeque<>();
    Matcher matcher = TOKEN.matcher(formula);
    while (matcher.find()) {
      tokens.add(matcher.group());
    }
    return read(tokens);
  }

  /** Everything up to the parenthesis that closes what stands before. */
  private String read(Deque<String> tokens) {
    Line line = new Line();
    while (!tokens.isEmpty() && !tokens.peek().equals(")")) {
      String token = tokens.remove();
      if (token.equals("(")) {
        line.add("(" + inside(tokens) + ")");
      } else if (isQuantifier(token, tokens)) {
        line.add(quantifier(token, tokens));
      } else if (rules.tables().containsKey(token) && "(".equals(tokens.peek())) {
        line.add(lookup(token, tokens));
      } else {
        line.add(one(token, tokens));
      }
    }
    return line.toString();
  }

  private String inside(Deque<String> tokens) {
    String inner = read(tokens);
    tokens.poll();
    return inner;
  }

  private String one(String token, Deque<String> tokens) {
    if (!Character.isLetter(token.charAt(0))) {
      return SIGNS.getOrDefault(token, token);
    }
    Optional<Property> property = property(token);
    if (property.isPresent() && property.get() instanceof Property.Observation observation) {
      return title(token) + choice(observation, tokens);
    }
    String word = WORDS.get(token);
    if (word != null) {
      return word;
    }
    return property.isPresent() ? title(token) : name(token);
  }

  /** What follows an observation: {@code is}, {@code is not} or {@code in}, and the values. */
  private String choice(Property.Observation observation, Deque<String> tokens) {
    String next = tokens.peek();
    if (!"is".equals(next) && !"in".equals(next)) {
      return "";
    }
    tokens.remove();
    if ("in".equals(next)) {
      tokens.poll();
      List<String> values = new ArrayList<>();
      while (!tokens.isEmpty() && !tokens.peek().equals(")")) {
        String value = tokens.remove();
        if (!value.equals(",")) {
          values.add(value(observation, value));
        }
      }
      tokens.poll();
      return (values.size() > 1 ? " is one of " : " is ") + String.join(", ", values);
    }
    boolean denied = "not".equals(tokens.peek());
    if (denied) {
      tokens.remove();
    }
    String other = tokens.isEmpty() ? "" : tokens.remove();
    return (denied ? " is not " : " is ") + value(observation, other);
  }

  private String value(Property.Observation observation, String value) {
    return observation.values().values().contains(value)
        ? "“" + observation.title(value) + "”"
        : "the same as " + title(value);
  }

  private String lookup(String table, Deque<String> tokens) {
    tokens.remove();
    String key = inside(tokens);
    Rules.CitedTable cited = rules.tables().get(table);
    String title = cited == null ? table : cited.table().title();
    boolean several = cited != null && cited.table().columns().size() > 1;
    String column = tokens.isEmpty() ? "" : tokens.remove().substring(1).replace('_', ' ');
    return "‘" + title + (several ? ", " + column : "") + "’ for (" + key + ")";
  }

  private boolean isQuantifier(String token, Deque<String> tokens) {
    return List.of("all", "any", "sum").contains(token)
        && tokens.size() > 2
        && "in".equals(tokens.stream().skip(1).findFirst().orElse(""));
  }

  private String quantifier(String token, Deque<String> tokens) {
    tokens.remove();
    tokens.remove();
    Optional<Kind> kind = rules.vocabulary().kind(tokens.remove());
    String title = kind.map(Kind::title).orElse("thing");
    return switch (token) {
      case "all" -> "for every " + title;
      case "any" -> "for at least one " + title;
      default -> "the sum, over all " + kind.map(Kind::plural).orElse("things") + ", of";
    };
  }

  private Optional<Property> property(String path) {
    List<String> parts = properties(path);
    return parts.isEmpty()
        ? Optional.empty()
        : rules.vocabulary().property(parts.get(parts.size() - 1));
  }

  /** The parts of a path that are words of the vocabulary; what is before them is a variable. */
  private List<String> properties(String path) {
    return Arrays.stream(path.split("\\."))
        .filter(part -> rules.vocabulary().property(part).isPresent())
        .toList();
  }

  /** The last word of a path first: {@code a.b} is "b, of the a". */
  private String title(String path) {
    List<String> titles = new ArrayList<>();
    for (String part : properties(path)) {
      rules.vocabulary().property(part).ifPresent(found -> titles.add(0, found.title()));
    }
    return titles.isEmpty() ? path : String.join(", of the ", titles);
  }

  private String name(String name) {
    String step = named.get(name);
    @Nullable String limit =
        rules.limits().containsKey(name) ? rules.limits().get(name).title() : null;
    String title = step == null ? limit : step;
    return title == null ? name : "‘" + title + "’";
  }

  /** Words with a space between them, but not before a comma or a colon. */
  private static final class Line {
    private final StringBuilder text = new StringBuilder();

    void add(String word) {
      boolean close = word.equals(",") || word.equals(":");
      if (text.length() > 0 && !close) {
        text.append(' ');
      }
      text.append(word);
    }

    @Override
    public String toString() {
      return text.toString();
    }
  }
}
