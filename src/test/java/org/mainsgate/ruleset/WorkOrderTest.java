package org.mainsgate.ruleset;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.mainsgate.source.Binder;
import org.mainsgate.source.Complaints;
import org.mainsgate.source.StrictYaml;

/** The order of the work as rulesets write it. */
class WorkOrderTest {
  private static final Rules RULES =
      new Shelf().open(Shelf.Choice.named("gb"), new Complaints()).orElseThrow();

  private final Complaints complaints = new Complaints();

  @Test
  void theStepsComeInTheOrderOfTheFile() {
    List<WorkStep> steps = read(rest("a: {title: A, asks: [plug]}\n  b: {title: B}"));
    assertEquals("", complaints.renderAll());
    assertEquals(List.of("a", "b", "rest"), steps.stream().map(WorkStep::id).toList());
    assertEquals(List.of("plug"), steps.get(0).asks());
  }

  @Test
  void aFileWithoutAnOrderHasNoSteps() {
    assertEquals(List.of(), read("order: {}\n"));
    assertEquals("", complaints.renderAll());
  }

  @Test
  void somethingInNoStepIsNamed() {
    read("order:\n  a: {title: A, asks: [plug]}\n");
    assertComplaint("`sheath` stands in no step of the order of work");
    assertComplaint("`lead` stands in no step of the order of work");
    assertEquals(-1, complaints.renderAll().indexOf("`test_current` stands in no step"));
    assertEquals(-1, complaints.renderAll().indexOf("`rated_voltage` stands in no step"));
  }

  @Test
  void somethingInTwoStepsIsNamed() {
    read(rest("a: {title: A, asks: [plug]}\n  b: {title: B, asks: [plug]}"));
    assertComplaint("`plug` stands in two steps");
  }

  @Test
  void anUnknownNameGetsTheNearest() {
    read(rest("a: {title: A, asks: [plog]}"));
    assertComplaint("unknown property `plog`");
    assertComplaint("`plug`");
  }

  @Test
  void whatIsRecordedWithSomethingElseStandsInNoStep() {
    read(rest("a: {title: A, asks: [test_current]}"));
    assertComplaint("unknown property `test_current`");
  }

  @Test
  void aStepComesAfterEarlierOnesOnly() {
    String steps =
        "a: {title: A, asks: [plug], after: [b]}\n  b: {title: B, asks: [sheath], after: [a]}";
    List<WorkStep> read = read(rest(steps));
    assertEquals(List.of("a"), read.get(1).after());
    assertComplaint("unknown earlier step `b`");
  }

  @Test
  void aStopThatWaitsForWhatComesAfterItIsRefused() {
    read(rest("a: {title: A, asks: [plug], stop: {title: S, until: [lead-sheath], says: no}}"));
    assertComplaint("this stop waits for `sheath`, which comes after it");
  }

  @Test
  void aStopWithoutAKnownCheckIsRefused() {
    read(rest("a: {title: A, asks: [plug], stop: {title: S, until: [lead-sheat], says: no}}"));
    assertComplaint("unknown check `lead-sheat`");
    assertComplaint("a stop that nothing opens");
  }

  @Test
  void aProfileHasNoOrder() {
    String text = "format: 1\nprofile: own\nedition: x\nlanguage: 1\norder:\n  a: {title: A}\n";
    assertEquals(List.of(), readFile(text));
    assertComplaint("an order of work in a profile");
  }

  private void assertComplaint(String words) {
    String all = complaints.renderAll();
    assertTrue(all.contains(words), all);
  }

  /** These steps, and one with everything else that has to stand somewhere. */
  private static String rest(String steps) {
    Set<String> asks =
        RULES.vocabulary().properties().values().stream()
            .filter(RULES.vocabulary()::isAskedAtTheInstrument)
            .map(Property::name)
            .filter(name -> !name.equals("plug"))
            .collect(Collectors.toCollection(LinkedHashSet::new));
    String kinds =
        RULES.vocabulary().listedKinds().stream().map(Kind::name).collect(Collectors.joining(", "));
    return "order:\n  "
        + steps
        + "\n  rest: {title: Rest, asks: ["
        + String.join(", ", asks)
        + "], closes: ["
        + kinds
        + "]}\n";
  }

  private List<WorkStep> read(String order) {
    return readFile("format: 1\nruleset: order\nedition: x\nlanguage: 1\n" + order);
  }

  private List<WorkStep> readFile(String text) {
    RulesetFile file =
        StrictYaml.readFields("order.yaml", text.getBytes(StandardCharsets.UTF_8), complaints)
            .flatMap(fields -> Binder.bind(fields, RulesetFile.class, complaints))
            .orElseThrow(() -> new AssertionError(complaints.renderAll()));
    return new WorkOrder(RULES.vocabulary(), RULES.checks(), new Wording(complaints), complaints)
        .read(List.of(file));
  }
}
