package org.mainsgate.verdict;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.mainsgate.formula.Ground;
import org.mainsgate.ruleset.Check;

/** A finding while it is being made. */
final class Draft {
  private final Check check;
  private final String thing;
  private final String title;
  private final Set<Finding.Hold> holds = new LinkedHashSet<>();
  private final Set<String> settles = new LinkedHashSet<>();
  private final List<Finding.Remark> notes = new ArrayList<>();
  private List<Finding.Input> inputs = List.of();
  private List<Ground> arithmetic = List.of();
  private List<Finding.Used> limits = List.of();
  private String because = "";
  private String remedy = "";
  private @Nullable Judged judged;

  Draft(Check check, String thing, String title) {
    this.check = check;
    this.thing = thing;
    this.title = title;
  }

  Draft because(String text) {
    because = text;
    return this;
  }

  Draft judged(Judged decision) {
    judged = decision;
    return this;
  }

  void hold(Reason reason, String text) {
    holds.add(new Finding.Hold(reason, text));
  }

  void settle(String text) {
    settles.add(text);
  }

  void note(Finding.Remark remark) {
    notes.add(remark);
  }

  void remedy(String text) {
    remedy = text;
  }

  void inputs(List<Finding.Input> found) {
    inputs = found;
  }

  List<Finding.Input> inputs() {
    return inputs;
  }

  void arithmetic(List<Ground> grounds) {
    arithmetic = grounds;
  }

  List<Ground> arithmetic() {
    return arithmetic;
  }

  void limits(List<Finding.Used> used) {
    limits = used;
  }

  List<Finding.Used> limits() {
    return limits;
  }

  /** Whether nothing speaks against a pass yet. */
  boolean isClear() {
    return holds.isEmpty();
  }

  /** Whether one of the names in a choice is an input that nobody recorded. */
  boolean misses(String choice) {
    List<String> names = List.of(choice.split(" "));
    return inputs.stream()
        .filter(input -> !input.fact().recorded())
        .anyMatch(input -> names.stream().anyMatch(name -> ends(name, input.name())));
  }

  private static boolean ends(String path, String name) {
    return path.equals(name) || path.endsWith("." + name);
  }

  Finding finish(Outcome outcome) {
    boolean hold = outcome == Outcome.HOLD;
    return new Finding(
        check,
        thing,
        title,
        outcome,
        hold ? List.copyOf(holds) : List.of(),
        because,
        arithmetic,
        inputs,
        limits,
        notes,
        hold ? List.copyOf(settles) : List.of(),
        remedy,
        Optional.ofNullable(judged));
  }
}
