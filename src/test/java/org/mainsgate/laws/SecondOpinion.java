package org.mainsgate.laws;

import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.mainsgate.formula.Listing;
import org.mainsgate.ruleset.Vocabulary;
import org.mainsgate.verdict.Evidence;
import org.mainsgate.verdict.Outcome;

/**
 * A second opinion on the same rules and the same evidence: two naive evaluators over the text of
 * the rulesets, one for what must hold and one for what might. Pass is must, fail is not might,
 * hold is the rest.
 *
 * <p>It reads the ruleset files by itself, with its own parser for the whole formula language, and
 * reckons with its own fractions by trying ends and keys. It shares with the program only the
 * vocabulary, and the reading of one quantity with its unit.
 */
public final class SecondOpinion {
  private static final String NOBODY = "nobody has seen it";

  private final Vocabulary words;
  private final RuleText rules;

  private SecondOpinion(Vocabulary words, RuleText rules) {
    this.words = words;
    this.rules = rules;
  }

  /** An opinion on the newest edition's common rules with a profile, which is given by text. */
  public static SecondOpinion on(Vocabulary words, String profile) {
    return new SecondOpinion(words, new RuleText(profile));
  }

  /** What these checks say of each thing, by {@code check/thing}. */
  public Map<String, Outcome> outcomes(Evidence evidence, Collection<String> checks) {
    Map<String, Outcome> outcomes = new LinkedHashMap<>();
    Round round = new Round(evidence);
    for (String check : checks) {
      round.outcomes(check).forEach((thing, outcome) -> outcomes.put(check + "/" + thing, outcome));
    }
    return outcomes;
  }

  /** All checks on one instrument. */
  private final class Round {
    private final Evidence evidence;
    private final Map<String, Map<String, Outcome>> done = new HashMap<>();

    Round(Evidence evidence) {
      this.evidence = evidence;
    }

    private Map<?, ?> check(String id) {
      return rules.check(id);
    }

    private String text(String id, String field) {
      return RuleText.text(check(id), field);
    }

    Map<String, Outcome> outcomes(String id) {
      Map<String, Outcome> before = done.get(id);
      if (before != null) {
        return before;
      }
      Map<String, Outcome> outcomes = judged(id);
      done.put(id, outcomes);
      return outcomes;
    }

    private Map<String, Outcome> judged(String id) {
      String kind = text(id, "over");
      Map<String, Outcome> outcomes = new LinkedHashMap<>();
      if (kind.isEmpty()) {
        outcomes.put("instrument", outcome(id, "instrument"));
        return outcomes;
      }
      Listing list = evidence.list(kind).listing();
      list.items().forEach(item -> outcomes.put(item, outcome(id, item)));
      if (!list.closed()) {
        outcomes.put(kind, neverApplies(id) ? Outcome.NOT_APPLICABLE : Outcome.HOLD);
      } else if (list.items().isEmpty()) {
        boolean missed = text(id, "none").equals("hold") && !neverApplies(id);
        outcomes.put(kind, missed ? Outcome.HOLD : Outcome.NOT_APPLICABLE);
      }
      return outcomes;
    }

    private Scene scene(String id, String thing) {
      return Scene.of(rules, words, evidence, id, thing);
    }

    private boolean neverApplies(String id) {
      Scene scene = scene(id, NOBODY);
      return applies(id).filter(phrase -> isNever(phrase, scene)).isPresent();
    }

    /** Whether it does not hold, and no value from memory says so. */
    private boolean isNever(Phrase phrase, Scene scene) {
      return !phrase.holds(scene, false) && !isGuess(phrase, scene);
    }

    private boolean isGuess(Phrase phrase, Scene scene) {
      Scene looking = scene.afresh();
      phrase.look(looking);
      return looking.seen().isGuess();
    }

    private Optional<Phrase> applies(String id) {
      return Optional.of(text(id, "applies")).filter(text -> !text.isEmpty()).map(rules::phrase);
    }

    private Outcome outcome(String id, String thing) {
      Scene scene = scene(id, thing);
      Optional<Phrase> applies = applies(id);
      if (applies.isPresent() && isNever(applies.get(), scene)) {
        return Outcome.NOT_APPLICABLE;
      }
      if (applies.isPresent() && !applies.get().holds(scene, true)) {
        return Outcome.HOLD;
      }
      Phrase requirement = rules.phrase(text(id, "requirement"));
      boolean mightBeMet = requirement.holds(scene, false);
      boolean guess =
          isGuess(requirement, scene) || applies.filter(a -> isGuess(a, scene)).isPresent();
      if (!mightBeMet && text(id, "consequence").equals("fail")) {
        return guess ? Outcome.HOLD : Outcome.FAIL;
      }
      boolean met = requirement.holds(scene, true) || (!mightBeMet && isJudged(id, thing));
      return met && isClear(id, scene, thing) ? Outcome.PASS : Outcome.HOLD;
    }

    private boolean isJudged(String id, String thing) {
      return !text(id, "judge").isEmpty()
          && evidence.judged().stream()
              .anyMatch(found -> found.check().equals(id) && found.thing().equals(thing));
    }

    private List<Phrase> conditions(String id, String part) {
      return RuleText.list(check(id), part).stream()
          .map(condition -> rules.phrase(RuleText.text((Map<?, ?>) condition, "that")))
          .toList();
    }

    private boolean isClear(String id, Scene scene, String thing) {
      Scene looking = scene.afresh();
      applies(id).ifPresent(phrase -> phrase.look(looking));
      rules.phrase(text(id, "requirement")).look(looking);
      conditions(id, "provided").forEach(phrase -> phrase.look(looking));
      return looking.seen().isInOrder()
          && !looking.seen().isGuess()
          && conditions(id, "provided").stream().allMatch(phrase -> phrase.holds(scene, true))
          && conditions(id, "plausible").stream().allMatch(phrase -> phrase.holds(scene, false))
          && RuleText.list(check(id), "requires").stream()
              .allMatch(first -> hasPassed(String.valueOf(first), id, thing));
    }

    private boolean hasPassed(String first, String id, String thing) {
      String kind = text(first, "over");
      boolean same = !kind.isEmpty() && kind.equals(text(id, "over"));
      return outcomes(first).entrySet().stream()
          .filter(entry -> !same || entry.getKey().equals(thing))
          .allMatch(
              entry ->
                  entry.getValue() == Outcome.PASS || entry.getValue() == Outcome.NOT_APPLICABLE);
    }
  }
}
