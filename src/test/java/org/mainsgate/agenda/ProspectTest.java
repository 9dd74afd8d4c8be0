package org.mainsgate.agenda;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.mainsgate.evidence.Instrument;
import org.mainsgate.evidence.InstrumentRecord;
import org.mainsgate.ruleset.Property;

/** What a page of paper keeps room for. */
class ProspectTest {
  private static final InstrumentRecord WHOLE = Demo.record("NL-01");

  @Test
  void openListsBringTheEntriesOfTheirThings() {
    List<Prospect> prospects = of(bare());
    assertTrue(find(prospects, "ht_capacitor", "residual_voltage").certain());
    assertTrue(find(prospects, "lead", "sheath").certain());
    assertFalse(find(prospects, "lead", "plug_fuse").certain());
  }

  @Test
  void whereNothingIsNeededOfEveryThingItsObservationsAreSure() {
    List<Prospect> prospects = of(bare());
    assertTrue(find(prospects, "hazard", "hazard_kind").certain());
    assertFalse(find(prospects, "modification", "new_reservoir").certain());
  }

  @Test
  void aThingThatIsListedIsAskedAboutByItself() {
    List<Prospect> prospects = of(Demo.blank(WHOLE));
    assertTrue(prospects.stream().noneMatch(found -> found.kind().name().equals("ht_capacitor")));
    assertTrue(find(prospects, "hazard", "hazard_kind").certain());
  }

  @Test
  void whatIsClosedBringsNothing() {
    assertEquals(List.of(), of(WHOLE));
  }

  @Test
  void noNoteAndNothingOfAnotherFileIsKeptRoomFor() {
    List<Prospect> prospects = of(bare());
    assertTrue(prospects.size() > 10, () -> prospects.toString());
    for (Prospect prospect : prospects) {
      Property.Heading heading = prospect.property().heading();
      assertEquals(Property.Home.VISIT, heading.home());
      assertFalse(heading.tier() == Property.Tier.NOTE, () -> heading.name());
      assertTrue(prospect.kind().isListed(), () -> heading.name());
    }
  }

  /** Nothing written, and no thing listed either. */
  private static InstrumentRecord bare() {
    Instrument i = WHOLE.instrument();
    Instrument bare =
        new Instrument(
            i.tag(),
            i.uid(),
            i.what(),
            i.maker(),
            i.model(),
            i.serial(),
            i.made(),
            i.photos(),
            Map.of(),
            List.of());
    return new InstrumentRecord(WHOLE.bench(), bare, List.of());
  }

  private static List<Prospect> of(InstrumentRecord record) {
    return Prospect.of(Demo.RULES, Demo.RULES.firstStage(), Demo.look(record, Demo.ON).agenda());
  }

  private static Prospect find(List<Prospect> prospects, String kind, String property) {
    return prospects.stream()
        .filter(
            found -> found.kind().name().equals(kind) && found.property().name().equals(property))
        .findFirst()
        .orElseThrow();
  }
}
