package org.mainsgate.evidence;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.mainsgate.store.PaperBench;

/** The order of what stands in a file changes nothing but where it stands. */
class OrderPropertiesTest {
  private static final List<String> HEAD = List.of("format: 1", "date: 2026-11-25", "by: AR");

  private static final Map<String, List<String>> FOUND = found();

  private static Map<String, List<String>> found() {
    Map<String, List<String>> found = new LinkedHashMap<>();
    found.put("instrument", List.of("class: I", "chassis_tie: none", "unplugged: yes"));
    found.put("mains-lead", List.of("cores: three", "core_area: 0.75 mm²", "lead_length: 2.5 m"));
    found.put(
        "front-panel",
        List.of(
            "part_path: bonded",
            "earth_resistance: [{value: 0.13 Ω, id: e1}, {id: e2, value: 0.14 Ω, by: AR}]"));
    found.put("case", List.of("earth_resistance: 0.1 Ω", "part_path: [floating, bonded]"));
    found.put("looked", List.of("exposed_part: [case, front-panel]", "lead: 1"));
    return found;
  }

  private static String visit(Random random) {
    List<String> things = new ArrayList<>();
    FOUND.forEach((thing, said) -> things.add(thing + ": {" + shuffled(said, random) + "}"));
    List<String> fields = new ArrayList<>(HEAD);
    fields.add("found: {" + shuffled(things, random) + "}");
    fields.add(
        "withdrawn: ["
            + shuffled(
                List.of(
                    "{entry: e1, reason: misread}", "{reason: wrong_range, entry: e2, note: x}"),
                random)
            + "]");
    Collections.shuffle(fields, random);
    return String.join("\n", fields) + "\n";
  }

  private static String shuffled(List<String> parts, Random random) {
    List<String> order = new ArrayList<>(parts);
    Collections.shuffle(order, random);
    return String.join(", ", order);
  }

  /** Everything that a visit says, in its own order, without the places. */
  private static String said(Visit visit) {
    return visit.toString().replaceAll("visit\\.yaml:[0-9]+:[0-9]+", "there");
  }

  @Property(tries = 200)
  void theOrderInAVisitChangesNothing(@ForAll long seed) {
    assertEquals(
        said(Paper.draft(visit(new Random(0)))), said(Paper.draft(visit(new Random(seed)))));
  }

  @Property(tries = 50)
  void theOrderOfTheThingsOfAnInstrumentChangesNothing(@ForAll long seed) {
    int start = PaperBench.INSTRUMENT_TEXT.indexOf("things:\n") + "things:\n".length();
    List<String> things =
        new ArrayList<>(PaperBench.INSTRUMENT_TEXT.substring(start).lines().toList());
    Collections.shuffle(things, new Random(seed));
    Instrument other =
        Paper.instrument(
            PaperBench.INSTRUMENT_TEXT.substring(0, start) + String.join("\n", things) + "\n");
    assertEquals(Paper.INSTRUMENT.toString(), other.toString());
  }
}
