package org.mainsgate.laws;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Nature;
import org.mainsgate.quantity.ExactInterval;
import org.mainsgate.quantity.Rational;
import org.mainsgate.quantity.Typed;
import org.mainsgate.ruleset.Property;
import org.mainsgate.ruleset.Rules;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Fact;
import org.mainsgate.verdict.Outcome;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * A second opinion on the same rules and the same evidence: two naive evaluators over the text of
 * the rulesets, one for what must hold and one for what might. Pass is must, fail is not might,
 * hold is the rest.
 *
 * <p>It reads the ruleset files by itself and shares with the program only the vocabulary, the
 * fractions and the reading of a quantity with its unit. It knows the part of the formula language
 * that the rules use, and stops at anything else.
 */
public final class SecondOpinion {
  private final Vocabulary words;
  private final Map<String, Map<?, ?>> checks = new LinkedHashMap<>();
  private final Map<String, Rational> limits = new LinkedHashMap<>();
  private final Map<String, Map<?, ?>> tables = new LinkedHashMap<>();
  private final Map<String, Map<?, ?>> shapes = new LinkedHashMap<>();
  private final Map<String, String> steps = new LinkedHashMap<>();

  private SecondOpinion(Vocabulary words) {
    this.words = words;
  }

  /** An opinion on the rules of a profile of the program. */
  public static SecondOpinion on(Rules rules) {
    SecondOpinion opinion = new SecondOpinion(rules.vocabulary());
    Map<?, ?> editions = yaml(resource("/rulesets/editions.yaml"));
    Map<?, ?> newest = at(at(editions, "editions"), String.valueOf(editions.get("newest")));
    list(newest, "common").forEach(file -> opinion.read(Rulebook.text(String.valueOf(file))));
    opinion.read(Rulebook.text("profiles/" + rules.profile() + ".yaml"));
    return opinion;
  }

  private static String resource(String path) {
    try (InputStream in = SecondOpinion.class.getResourceAsStream(path)) {
      if (in == null) {
        throw new IllegalStateException("no " + path);
      }
      return new String(in.readAllBytes(), UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Map<?, ?> yaml(String text) {
    Object read = new Yaml(new SafeConstructor(new LoaderOptions())).load(text);
    return (Map<?, ?>) read;
  }

  private static Map<?, ?> at(Map<?, ?> map, String key) {
    return map.get(key) instanceof Map<?, ?> inner ? inner : Map.of();
  }

  private static List<?> list(Map<?, ?> map, String key) {
    return map.get(key) instanceof List<?> items ? items : List.of();
  }

  private static String text(Map<?, ?> map, String key) {
    Object value = map.get(key);
    return value == null ? "" : String.valueOf(value);
  }

  private void read(String file) {
    if (file.contains("standing: from memory")) {
      throw new IllegalStateException("the second opinion does not know values from memory");
    }
    Map<?, ?> all = yaml(file);
    at(all, "limits").forEach((name, v) -> limits.put(String.valueOf(name), value((Map<?, ?>) v)));
    at(all, "parameters").forEach((name, v) -> shapes.put(String.valueOf(name), (Map<?, ?>) v));
    at(all, "tables").forEach((name, v) -> tables.put(String.valueOf(name), (Map<?, ?>) v));
    readSteps(all);
    at(all, "checks").forEach((name, v) -> checks.put(String.valueOf(name), (Map<?, ?>) v));
  }

  private void readSteps(Map<?, ?> from) {
    for (String part : List.of("steps", "statements")) {
      at(from, part)
          .forEach((name, v) -> steps.put(String.valueOf(name), text((Map<?, ?>) v, "is")));
    }
  }

  private static Rational value(Map<?, ?> entry) {
    return parsed(text(entry, "value"));
  }

  private static Rational parsed(String text) {
    return Rational.parse(text)
        .orElseGet(() -> ((Typed) Typed.parse(text)).nominal().orElseThrow());
  }

  /** What each check says of each thing, by {@code check/thing}. */
  public Map<String, Outcome> outcomes(Evidence evidence) {
    Map<String, Outcome> outcomes = new LinkedHashMap<>();
    for (String check : checks.keySet()) {
      outcomes(check, evidence)
          .forEach((thing, outcome) -> outcomes.put(check + "/" + thing, outcome));
    }
    return outcomes;
  }

  private Map<?, ?> check(String id) {
    Map<?, ?> check = checks.get(id);
    if (check == null) {
      throw new IllegalArgumentException("no check " + id);
    }
    return check;
  }

  private Map<String, Outcome> outcomes(String id, Evidence evidence) {
    String kind = text(check(id), "over");
    Map<String, Outcome> outcomes = new LinkedHashMap<>();
    if (kind.isEmpty()) {
      outcomes.put("instrument", outcome(id, "instrument", evidence));
      return outcomes;
    }
    List<String> items = evidence.list(kind).listing().items();
    items.forEach(item -> outcomes.put(item, outcome(id, item, evidence)));
    if (!evidence.list(kind).listing().closed()) {
      boolean never = !applies(id, "nobody has seen it", evidence).might();
      outcomes.put(kind, never ? Outcome.NOT_APPLICABLE : Outcome.HOLD);
    } else if (items.isEmpty()) {
      boolean missed =
          text(check(id), "none").equals("hold")
              && applies(id, "nobody has seen it", evidence).might();
      outcomes.put(kind, missed ? Outcome.HOLD : Outcome.NOT_APPLICABLE);
    }
    return outcomes;
  }

  /** Whether a statement must hold, and whether it might. */
  private record Opinion(boolean must, boolean might) {}

  private Opinion applies(String id, String thing, Evidence evidence) {
    String applies = text(check(id), "applies");
    return applies.isEmpty() ? new Opinion(true, true) : ask(applies, id, thing, evidence);
  }

  private Opinion ask(String formula, String id, String thing, Evidence evidence) {
    Asker asker = new Asker(id, thing, evidence);
    Claim claim = new Reader(formula, asker).claim();
    return new Opinion(claim.holds(true), claim.holds(false));
  }

  private Outcome outcome(String id, String thing, Evidence evidence) {
    Map<?, ?> check = check(id);
    Opinion applies = applies(id, thing, evidence);
    if (!applies.might()) {
      return Outcome.NOT_APPLICABLE;
    }
    if (!applies.must()) {
      return Outcome.HOLD;
    }
    Opinion requirement = ask(text(check, "requirement"), id, thing, evidence);
    boolean fails = text(check, "consequence").equals("fail");
    if (!requirement.might() && fails) {
      return Outcome.FAIL;
    }
    boolean judged =
        !requirement.might()
            && !text(check, "judge").isEmpty()
            && evidence.judged().stream()
                .anyMatch(found -> found.check().equals(id) && found.thing().equals(thing));
    boolean passes = (requirement.must() || judged) && isClear(id, thing, evidence);
    return passes ? Outcome.PASS : Outcome.HOLD;
  }

  private boolean isClear(String id, String thing, Evidence evidence) {
    Map<?, ?> check = check(id);
    List<String> asked = new ArrayList<>(List.of(text(check, "requirement")));
    asked.add(text(check, "applies"));
    for (Object condition : list(check, "provided")) {
      String that = text((Map<?, ?>) condition, "that");
      asked.add(that);
      if (!ask(that, id, thing, evidence).must()) {
        return false;
      }
    }
    for (Object condition : list(check, "plausible")) {
      if (!ask(text((Map<?, ?>) condition, "that"), id, thing, evidence).might()) {
        return false;
      }
    }
    Asker asker = new Asker(id, thing, evidence);
    asked.stream().filter(text -> !text.isEmpty()).forEach(text -> new Reader(text, asker).claim());
    return asker.isAllInOrder()
        && list(check, "requires").stream()
            .allMatch(first -> hasPassed(String.valueOf(first), id, thing, evidence));
  }

  private boolean hasPassed(String first, String id, String thing, Evidence evidence) {
    String kind = text(check(first), "over");
    boolean same = !kind.isEmpty() && kind.equals(text(check(id), "over"));
    return outcomes(first, evidence).entrySet().stream()
        .filter(entry -> !same || entry.getKey().equals(thing))
        .allMatch(
            entry ->
                entry.getValue() == Outcome.PASS || entry.getValue() == Outcome.NOT_APPLICABLE);
  }

  /** A statement. */
  private interface Claim {
    boolean holds(boolean must);
  }

  /** The ends of what a number can be; null is endless. */
  private record Ends(@Nullable Rational lo, @Nullable Rational hi) {
    static final Ends UNKNOWN = new Ends(null, null);

    static Ends of(Rational point) {
      return new Ends(point, point);
    }

    Ends hull(Ends other) {
      return new Ends(
          lo == null || other.lo == null ? null : lo.min(other.lo),
          hi == null || other.hi == null ? null : hi.max(other.hi));
    }
  }

  /** What evidence says of a path, and whether all of it is in order. */
  private final class Asker {
    private final String check;
    private final String thing;
    private final Evidence evidence;
    private boolean inOrder = true;

    Asker(String check, String thing, Evidence evidence) {
      this.check = check;
      this.thing = thing;
      this.evidence = evidence;
    }

    boolean isAllInOrder() {
      return inOrder;
    }

    Optional<String> step(String name) {
      String own = text(at(at(check(check), "steps"), name), "is");
      return own.isEmpty() ? Optional.ofNullable(steps.get(name)) : Optional.of(own);
    }

    /** The facts at the end of a path, of which one is true; none if nothing is known. */
    List<Fact> facts(List<String> path) {
      Property property = words.property(path.get(0)).orElseThrow();
      boolean own = property.isOf(text(check(check), "over"));
      String owner = own ? thing : property.isOf("bench") ? "bench" : "instrument";
      List<Fact> facts = evidence.fact(owner, property.name()).map(List::of).orElse(List.of());
      for (String name : path.subList(1, path.size())) {
        facts =
            property instanceof Property.Pointer to ? behind(to, facts, name) : with(facts, name);
        property = words.property(name).orElseThrow();
      }
      boolean known = !facts.isEmpty() && facts.stream().allMatch(Fact::recorded);
      boolean contradicted = facts.stream().anyMatch(f -> f.disagrees() || isImpossible(f));
      inOrder = inOrder && known && !contradicted;
      return facts;
    }

    private static boolean isImpossible(Fact fact) {
      return fact instanceof Fact.Amount amount && amount.impossible();
    }

    private static List<Fact> with(List<Fact> facts, String name) {
      List<Fact> with = new ArrayList<>();
      for (Fact fact : facts) {
        Fact found = fact.with().get(name);
        if (found == null) {
          return List.of();
        }
        with.add(found);
      }
      return with;
    }

    private List<Fact> behind(Property.Pointer to, List<Fact> pointers, String name) {
      Set<String> things = new HashSet<>();
      boolean complete = true;
      for (Fact fact : pointers) {
        things.addAll(((Fact.Pointer) fact).things());
        complete = complete && ((Fact.Pointer) fact).complete();
        inOrder = inOrder && fact.recorded();
      }
      if (pointers.isEmpty()) {
        things.addAll(evidence.list(to.to()).listing().items());
        complete = evidence.list(to.to()).listing().closed();
        inOrder = inOrder && things.size() == 1;
      }
      List<Fact> facts = new ArrayList<>();
      for (String found : things) {
        evidence.fact(found, name).ifPresent(facts::add);
      }
      return complete && facts.size() == things.size() ? facts : List.of();
    }

    Ends number(List<String> path) {
      Property.Quantity last =
          (Property.Quantity) words.property(path.get(path.size() - 1)).orElseThrow();
      if (last.nature() == Nature.VARIES) {
        throw new IllegalStateException("the second opinion does not know what varies");
      }
      return facts(path).stream()
          .map(fact -> ((Fact.Amount) fact).range().exact())
          .map(range -> new Ends(range.lo(), range.hi()))
          .reduce(Ends::hull)
          .orElseGet(() -> ends(RandomEvidence.possible(last)));
    }

    private static Ends ends(ExactInterval range) {
      return new Ends(range.lo(), range.hi());
    }

    Set<String> names(List<String> path) {
      Property.Observation last =
          (Property.Observation) words.property(path.get(path.size() - 1)).orElseThrow();
      List<Fact> facts = facts(path);
      Set<String> names = new HashSet<>();
      facts.forEach(fact -> names.addAll(((Fact.Named) fact).candidates()));
      return facts.isEmpty() ? Set.copyOf(last.values().values()) : names;
    }

    boolean isObservation(List<String> path) {
      String last = path.get(path.size() - 1);
      return words.property(last).orElse(null) instanceof Property.Observation;
    }

    Ends cell(String table, String column, List<String> key) {
      Set<String> names = new HashSet<>(names(key));
      return rows(table).stream()
          .filter(row -> names.remove(text(row, "is")))
          .map(row -> Ends.of(parsed(text(row, column))))
          .reduce(Ends::hull)
          .filter(ends -> names.isEmpty())
          .orElse(Ends.UNKNOWN);
    }

    private List<Map<?, ?>> rows(String table) {
      List<Map<?, ?>> rows = new ArrayList<>();
      list(at(tables, table), "rows").forEach(row -> rows.add((Map<?, ?>) row));
      return rows;
    }

    /** By trial of every key that can matter: the ends, the rows, and a hair beside them. */
    Ends cell(String table, String column, Ends key) {
      boolean atLeast = shape(table).equals("at least");
      List<Map<?, ?>> rows = rows(table);
      Rational last = parsed(text(rows.get(rows.size() - 1), "at"));
      Rational lo = key.lo();
      Rational hi = key.hi();
      if (atLeast && (hi == null || hi.compareTo(last) > 0)) {
        return Ends.UNKNOWN;
      }
      if (!atLeast && (lo == null || lo.compareTo(parsed(text(rows.get(0), "at"))) < 0)) {
        return Ends.UNKNOWN;
      }
      Rational from = lo == null ? Rational.of(-1) : lo;
      Rational to = hi == null ? last.max(from).plus(Rational.ONE) : hi;
      Ends cells = one(rows, column, from, atLeast).hull(one(rows, column, to, atLeast));
      for (Map<?, ?> row : rows) {
        Rational at = parsed(text(row, "at"));
        if (from.compareTo(at) <= 0 && at.compareTo(to) <= 0) {
          cells = cells.hull(one(rows, column, at, atLeast));
        }
      }
      return cells;
    }

    private String shape(String table) {
      String own = text(at(tables, table), "row");
      return own.isEmpty() ? text(at(shapes, table), "row") : own;
    }

    private static Ends one(List<Map<?, ?>> rows, String column, Rational key, boolean atLeast) {
      Optional<Map<?, ?>> found = Optional.empty();
      for (Map<?, ?> row : rows) {
        int order = parsed(text(row, "at")).compareTo(key);
        if (atLeast ? order >= 0 && found.isEmpty() : order <= 0) {
          found = Optional.of(row);
        }
      }
      return found.map(row -> Ends.of(parsed(text(row, column)))).orElse(Ends.UNKNOWN);
    }
  }

  /** A formula read and, at the same time, made ready to be asked: no tree in between. */
  private final class Reader {
    private final List<String> tokens = new ArrayList<>();
    private final Asker asker;
    private int next;

    Reader(String formula, Asker asker) {
      this.asker = asker;
      var matcher =
          java.util.regex.Pattern.compile(
                  "[A-Za-z0-9_]+(?:\\.[A-Za-z0-9_]+)*|\\.[a-z_]+|<=|>=|[-+*/<>(),]")
              .matcher(formula);
      while (matcher.find()) {
        tokens.add(matcher.group());
      }
    }

    Claim claim() {
      Claim claim = implication();
      if (next < tokens.size()) {
        throw new IllegalStateException("the second opinion stops at " + tokens.get(next));
      }
      return claim;
    }

    private boolean take(String token) {
      boolean there = next < tokens.size() && tokens.get(next).equals(token);
      next += there ? 1 : 0;
      return there;
    }

    private String word() {
      return next < tokens.size() ? tokens.get(next++) : "the end";
    }

    private Claim implication() {
      Claim left = disjunction();
      if (!take("implies")) {
        return left;
      }
      Claim right = implication();
      return must -> !left.holds(!must) || right.holds(must);
    }

    private Claim disjunction() {
      Claim all = conjunction();
      while (take("or")) {
        Claim left = all;
        Claim right = conjunction();
        all = must -> left.holds(must) || right.holds(must);
      }
      return all;
    }

    private Claim conjunction() {
      Claim all = negation();
      while (take("and")) {
        Claim left = all;
        Claim right = negation();
        all = must -> left.holds(must) && right.holds(must);
      }
      return all;
    }

    private Claim negation() {
      if (take("not")) {
        Claim claim = negation();
        return must -> !claim.holds(!must);
      }
      int start = next;
      Optional<Claim> comparison = comparison();
      if (comparison.isPresent()) {
        return comparison.get();
      }
      next = start;
      if (take("(")) {
        Claim inner = implication();
        take(")");
        return inner;
      }
      return named();
    }

    private Claim named() {
      List<String> path = List.of(word().split("\\."));
      if (take("in")) {
        take("(");
        Set<String> wanted = new HashSet<>();
        do {
          wanted.add(word());
        } while (take(","));
        take(")");
        return one(asker.names(path), wanted);
      }
      if (take("is")) {
        boolean negated = take("not");
        String word = word();
        Claim agrees = is(path, word);
        return negated ? must -> !agrees.holds(!must) : agrees;
      }
      String step = asker.step(path.get(0)).orElseThrow();
      return new Reader(step, asker).claim();
    }

    private Claim is(List<String> path, String word) {
      Property.Observation left =
          (Property.Observation) words.property(path.get(path.size() - 1)).orElseThrow();
      Set<String> names = asker.names(path);
      if (left.values().values().contains(word)) {
        return one(names, Set.of(word));
      }
      Set<String> others = asker.names(List.of(word.split("\\.")));
      return must ->
          must
              ? names.size() == 1 && names.equals(others)
              : names.stream().anyMatch(others::contains);
    }

    private static Claim one(Set<String> names, Set<String> wanted) {
      return must -> must ? wanted.containsAll(names) : names.stream().anyMatch(wanted::contains);
    }

    private Optional<Claim> comparison() {
      Optional<Ends> left = sum();
      String relation = word();
      if (left.isEmpty() || !Set.of("<=", "<", ">=", ">").contains(relation)) {
        return Optional.empty();
      }
      Ends right = sum().orElseThrow();
      boolean strict = relation.length() == 1;
      return Optional.of(
          relation.startsWith("<")
              ? must -> below(left.get(), right, must, strict)
              : must -> below(right, left.get(), must, strict));
    }

    private static boolean below(Ends small, Ends great, boolean must, boolean strict) {
      Rational worst = must ? small.hi() : small.lo();
      Rational best = must ? great.lo() : great.hi();
      if (worst == null || best == null) {
        return !must;
      }
      return strict ? worst.compareTo(best) < 0 : worst.compareTo(best) <= 0;
    }

    private Optional<Ends> sum() {
      Optional<Ends> all = product();
      while (all.isPresent() && next < tokens.size() && "+-".contains(tokens.get(next))) {
        ExactInterval left = interval(all.get());
        boolean plus = word().equals("+");
        all =
            product()
                .map(Reader::interval)
                .map(right -> plus ? left.plus(right) : left.minus(right))
                .map(Reader::ends);
      }
      return all;
    }

    private Optional<Ends> product() {
      Optional<Ends> all = primary();
      while (all.isPresent() && next < tokens.size() && "*/".contains(tokens.get(next))) {
        ExactInterval left = interval(all.get());
        boolean times = word().equals("*");
        all =
            primary()
                .map(Reader::interval)
                .map(right -> times ? left.times(right) : left.dividedBy(right))
                .map(Reader::ends);
      }
      return all;
    }

    private static ExactInterval interval(Ends ends) {
      return new ExactInterval(ends.lo(), ends.hi());
    }

    private static Ends ends(ExactInterval interval) {
      return new Ends(interval.lo(), interval.hi());
    }

    private Optional<Ends> primary() {
      if (take("(")) {
        Optional<Ends> inner = sum();
        return take(")") ? inner : Optional.empty();
      }
      String word = word();
      Optional<Rational> number = Rational.parse(word);
      if (number.isPresent()) {
        return number.map(Ends::of);
      }
      if (tables.containsKey(word)) {
        return Optional.of(lookup(word));
      }
      Rational limit = limits.get(word);
      if (limit != null) {
        return Optional.of(Ends.of(limit));
      }
      return path(word);
    }

    private Optional<Ends> path(String word) {
      Optional<String> step = asker.step(word);
      if (step.isPresent()) {
        Reader inner = new Reader(step.get(), asker);
        return inner.sum().filter(ends -> inner.next == inner.tokens.size());
      }
      List<String> path = List.of(word.split("\\."));
      Optional<Property> last = words.property(path.get(path.size() - 1));
      return last.filter(Property.Quantity.class::isInstance).map(found -> asker.number(path));
    }

    private Ends lookup(String table) {
      take("(");
      int start = next;
      List<String> path = List.of(word().split("\\."));
      if (asker.isObservation(path)) {
        take(")");
        return asker.cell(table, word().substring(1), path);
      }
      next = start;
      Ends key = sum().orElseThrow();
      take(")");
      return asker.cell(table, word().substring(1), key);
    }
  }
}
