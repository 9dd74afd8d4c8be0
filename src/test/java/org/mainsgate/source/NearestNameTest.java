package org.mainsgate.source;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NearestNameTest {

  private static final List<String> NAMES =
      List.of("profile", "earth_resistance", "earth", "lead", "zone", "N m");

  @ParameterizedTest
  @CsvSource({
    "profil, profile",
    "proifle, profile",
    "PROFILE, profile",
    "earth-resistance, earth_resistance",
    "Earth Resistance, earth_resistance",
    "earht_resistence, earth_resistance",
    "eart, earth",
    "laed, lead",
    "n_m, N m",
  })
  void aSlipOfTheFingersIsFound(String wrong, String right) {
    assertEquals(Optional.of(right), NearestName.of(wrong, NAMES));
  }

  @ParameterizedTest
  @CsvSource({"profound", "zn", "x", "insulation", "leeds"})
  void anotherWordIsNot(String wrong) {
    assertEquals(Optional.empty(), NearestName.of(wrong, NAMES));
  }

  @Test
  void nothingIsNearToNothingOrToAWholeText() {
    assertEquals(Optional.empty(), NearestName.of("", List.of("a", "")));
    assertEquals(Optional.empty(), NearestName.of("a".repeat(65), List.of("a".repeat(65))));
  }

  @Test
  void ofTwoEquallyNearTheFirstIsTaken() {
    assertEquals(Optional.of("beat"), NearestName.of("bat", List.of("beat", "boat")));
    assertEquals(Optional.of("boat"), NearestName.of("bat", List.of("boat", "beat")));
  }

  @Test
  void theNearerOneIsTakenWhateverTheOrder() {
    assertEquals(Optional.of("length"), NearestName.of("lenght", List.of("lengths", "length")));
  }
}
