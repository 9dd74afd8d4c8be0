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
    Golden.check("bench.json", Json.of(Samples.setting(), List.of(Samples.near())));
  }

  @Test
  void nothingRecordedIsWrittenAsOpenEnds() throws IOException {
    Golden.check("blank.json", Json.of(Samples.setting(), List.of(Samples.blank())));
  }

  @Test
  void theSameDossierGivesTheSameText() {
    assertEquals(
        Json.of(Samples.setting(), List.of(Samples.unearthed())),
        Json.of(Samples.setting(), List.of(Samples.unearthed())));
  }

  @Test
  void noInstrumentIsNoPass() {
    assertEquals(Verdict.HOLD, Json.worst(List.of()));
    assertTrue(Json.of(Samples.setting(), List.of()).endsWith("\"instruments\": []\n}\n"));
  }

  @Test
  void textIsEscaped() {
    assertEquals(
        "\"a\\\"b\\\\c\\u000ad\\u202e\\ud800Ω\uD83D\uDE00\"\n",
        new JsonText().text("a\"b\\c\nd\u202e\ud800Ω\uD83D\uDE00").toString());
  }
}
