package org.mainsgate.laws;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.BinaryOperator;
import org.mainsgate.formula.Listing;

/**
 * A formula as the second opinion understands it: whether it must hold, whether it might, and
 * between which ends its number lies.
 */
interface Phrase {
  /** Whether it must hold, or whether it might. */
  default boolean holds(Scene scene, boolean must) {
    throw new IllegalStateException("no statement: " + this);
  }

  default Ends ends(Scene scene) {
    throw new IllegalStateException("no number: " + this);
  }

  /** Looks at everything that it names, also where something else settles the matter. */
  void look(Scene scene);

  /** A number that stands in the text. */
  record Fixed(Ends value) implements Phrase {
    @Override
    public Ends ends(Scene scene) {
      return value;
    }

    @Override
    public void look(Scene scene) {}
  }

  /** A step, a statement, a limit, or something recorded. */
  record Named(List<String> path) implements Phrase {
    @Override
    public boolean holds(Scene scene, boolean must) {
      return scene.step(path).orElseThrow().phrase().holds(scene.step(path).get().scene(), must);
    }

    @Override
    public Ends ends(Scene scene) {
      return scene
          .step(path)
          .map(step -> step.phrase().ends(step.scene()))
          .or(() -> scene.limit(path).map(Ends::of))
          .orElseGet(() -> scene.number(path));
    }

    @Override
    public void look(Scene scene) {
      if (scene.step(path).isPresent()) {
        scene.step(path).get().phrase().look(scene.step(path).get().scene());
      } else if (scene.limit(path).isPresent()) {
        scene.lookAtLimit(path);
      } else {
        scene.lookAt(path);
      }
    }
  }

  /** That an observation is one of these values, or the same as another observation. */
  record Is(Phrase subject, Set<String> words) implements Phrase {
    private List<String> path() {
      return ((Named) subject).path();
    }

    private boolean isValue(Scene scene) {
      return scene.values(path()).containsAll(words);
    }

    private List<String> other() {
      return List.of(words.iterator().next().split("\\."));
    }

    @Override
    public boolean holds(Scene scene, boolean must) {
      Set<String> names = scene.names(path());
      Set<String> wanted = isValue(scene) ? words : scene.names(other());
      if (!must) {
        return names.stream().anyMatch(wanted::contains);
      }
      return names.stream()
          .allMatch(name -> isValue(scene) ? wanted.contains(name) : wanted.equals(Set.of(name)));
    }

    @Override
    public void look(Scene scene) {
      scene.lookAt(path());
      if (!isValue(scene)) {
        scene.lookAt(other());
      }
    }
  }

  /** That one number is below another. */
  record Below(Phrase small, Phrase great, boolean strict) implements Phrase {
    @Override
    public boolean holds(Scene scene, boolean must) {
      return small.ends(scene).isBelow(great.ends(scene), must, strict);
    }

    @Override
    public void look(Scene scene) {
      small.look(scene);
      great.look(scene);
    }
  }

  record Joined(String word, Phrase left, Phrase right) implements Phrase {
    @Override
    public boolean holds(Scene scene, boolean must) {
      boolean first = left.holds(scene, must);
      boolean second = right.holds(scene, must);
      return word.equals("and") ? first && second : first || second;
    }

    @Override
    public void look(Scene scene) {
      left.look(scene);
      right.look(scene);
    }
  }

  record Not(Phrase statement) implements Phrase {
    @Override
    public boolean holds(Scene scene, boolean must) {
      return !statement.holds(scene, !must);
    }

    @Override
    public void look(Scene scene) {
      statement.look(scene);
    }
  }

  record Reckoned(String sign, Phrase left, Phrase right) implements Phrase {
    private static final Map<String, BinaryOperator<Fraction>> SIGNS =
        Map.of(
            "+", Fraction::plus,
            "-", Fraction::minus,
            "*", Fraction::times,
            "min", Fraction::smaller,
            "max", Fraction::greater);

    @Override
    public Ends ends(Scene scene) {
      Ends first = left.ends(scene);
      Ends second = right.ends(scene);
      BinaryOperator<Fraction> operation = SIGNS.get(sign);
      return operation == null ? first.over(second) : first.with(second, operation);
    }

    @Override
    public void look(Scene scene) {
      left.look(scene);
      right.look(scene);
    }
  }

  record Function(String name, Phrase argument) implements Phrase {
    @Override
    public Ends ends(Scene scene) {
      Ends value = argument.ends(scene);
      return switch (name) {
        case "sqrt" -> value.root();
        case "ln" -> value.ln();
        default -> value.exp2();
      };
    }

    @Override
    public void look(Scene scene) {
      argument.look(scene);
    }
  }

  /** One of the values of something that varies. */
  record Extreme(String end, List<String> path) implements Phrase {
    @Override
    public Ends ends(Scene scene) {
      return scene.varying(path, end);
    }

    @Override
    public void look(Scene scene) {
      scene.lookAt(path);
    }
  }

  /** A cell of a table, by trial of every key that can matter. */
  record Cell(String table, Phrase key, String column) implements Phrase {
    private List<RuleText.Row> rows(Scene scene) {
      return scene.rules().rows(table);
    }

    private boolean isNamed(Scene scene) {
      return rows(scene).stream().allMatch(row -> row.number().isEmpty());
    }

    /** The rows that it can lead to; null among them for none. */
    private Set<RuleText.@org.jspecify.annotations.Nullable Row> found(Scene scene) {
      if (isNamed(scene)) {
        return named(scene);
      }
      return new Keys(rows(scene), scene.rules().rowRule(table)).found(key.ends(scene));
    }

    private Set<RuleText.@org.jspecify.annotations.Nullable Row> named(Scene scene) {
      Set<RuleText.@org.jspecify.annotations.Nullable Row> found = new HashSet<>();
      for (String name : scene.names(((Named) key).path())) {
        found.add(
            rows(scene).stream().filter(row -> row.named().equals(name)).findFirst().orElse(null));
      }
      return found;
    }

    @Override
    public Ends ends(Scene scene) {
      Ends all = null;
      for (RuleText.Row row : found(scene)) {
        Ends cell = row == null ? Ends.UNKNOWN : row.cell(column);
        all = all == null ? cell : all.hull(cell);
      }
      return all == null ? Ends.UNKNOWN : all;
    }

    @Override
    public void look(Scene scene) {
      if (isNamed(scene)) {
        scene.lookAt(((Named) key).path());
      } else {
        key.look(scene);
      }
      if (!scene.isOfNothing()) {
        found(scene).forEach(row -> scene.lookAtRow(row != null && row.guess()));
      }
    }
  }

  /** All, any, or the sum over the things of a kind. */
  record Each(String quantifier, String variable, String kind, Phrase body) implements Phrase {
    @Override
    public boolean holds(Scene scene, boolean must) {
      Listing list = scene.list(kind);
      boolean all = quantifier.equals("all");
      boolean sure = list.closed();
      for (String item : list.items()) {
        boolean one = body.holds(scene.with(variable, item), must);
        if (one != all) {
          return one;
        }
      }
      return all ? sure || !must : !sure && !must;
    }

    @Override
    public Ends ends(Scene scene) {
      Listing list = scene.list(kind);
      Ends total = Ends.of(Fraction.ZERO);
      for (String item : list.items()) {
        total = total.with(body.ends(scene.with(variable, item)), Fraction::plus);
      }
      return list.closed() ? total : Ends.UNKNOWN;
    }

    /** What the body says of limits counts also where there is no thing. */
    @Override
    public void look(Scene scene) {
      body.look(scene.ofNothing());
      scene.list(kind).items().forEach(item -> body.look(scene.with(variable, item)));
    }
  }
}
