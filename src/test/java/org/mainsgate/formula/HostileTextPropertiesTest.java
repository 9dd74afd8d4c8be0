package org.mainsgate.formula;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.mainsgate.source.Complaint;
import org.mainsgate.source.Complaints;

/** Whatever is typed: a formula or a complaint inside the text, never an exception. */
final class HostileTextPropertiesTest {
  @Provide
  Arbitrary<String> words() {
    return Arbitraries.of(
            "a", "b", "k", "p", "p.m", "part", "red", "0", "1.5", "0I", "Ω", "0 V", "/", "-", "+",
            "*", "<=", ">", "(", ")", ",", ":", ".", "and", "or", "not", "implies", "is", "in",
            "all", "any", "sum", "min", "sqrt", "pi", "highest", "v", "steps", "value", "colours",
            "\n", "°", "𝛀", "warm", "twice", "supply", "voltage")
        .list()
        .ofMaxSize(25)
        .map(words -> String.join(" ", words));
  }

  @Property(tries = 3000)
  void wordsOfTheLanguageInAnyOrder(@ForAll("words") String text) {
    check(text);
    check(text.replace(" ", ""));
  }

  @Property(tries = 500)
  void anyText(@ForAll String text) {
    check(text);
  }

  private static void check(String text) {
    Complaints complaints = new Complaints();
    Optional<Formula> formula = Formula.parse(Shop.text(text), complaints);
    assertEquals(formula.isEmpty(), !complaints.isEmpty());
    if (formula.isPresent()) {
      Optional<TruthFormula> truth = formula.get().asTruth(Shop.open(), complaints);
      assertEquals(truth.isEmpty(), !complaints.isEmpty());
      truth.ifPresent(checked -> checked.explain(World.nothing()));
    }
    for (Complaint complaint : complaints.sorted()) {
      assertTrue(complaint.at().line() <= text.lines().count() + 1);
    }
  }
}
