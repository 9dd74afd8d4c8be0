package org.mainsgate.report;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.mainsgate.verdict.Verdict;

class JsonTest {

  @Test
  void aBenchIsWrittenInAFixedOrder() throws IOException {
    Golden.check("bench.json", Json.of(Samples.setting(), List.of(Samples.near()), List.of()));
  }

  @Test
  void nothingRecordedIsWrittenAsOpenEnds() throws IOException {
    Golden.check("blank.json", Json.of(Samples.setting(), List.of(Samples.blank()), List.of()));
  }

  @Test
  void theSameDossierGivesTheSameText() {
    assertEquals(
        Json.of(Samples.setting(), List.of(Samples.unearthed()), List.of()),
        Json.of(Samples.setting(), List.of(Samples.unearthed()), List.of()));
  }

  @Test
  void noInstrumentIsNoPass() {
    assertEquals(Verdict.HOLD, Json.worst(List.of(), List.of()));
    assertEquals(Verdict.HOLD, Json.worst(List.of(Verdict.PASS), List.of("NL-99")));
    assertEquals(Verdict.PASS, Json.worst(List.of(Verdict.PASS), List.of()));
    assertTrue(Json.of(Samples.setting(), List.of(), List.of()).contains("\"instruments\": [],"));
  }

  @Test
  void textIsEscaped() {
    assertEquals(
        "\"a\\\"b\\\\c\\u000ad\\u202e\\ud800Ω\uD83D\uDE00\"\n",
        new JsonText().text("a\"b\\c\nd\u202e\ud800Ω\uD83D\uDE00").toString());
  }
}
