package tiptoe.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SplitTest {

  /** First digits by {@code printf %s NAME | sha256sum} (GNU coreutils): below 8 is train. */
  @ParameterizedTest
  @CsvSource({
    "slt, TRAIN", // 0d
    "awb, HELD_OUT", // e1
    "103-1240-0000.wav, TRAIN", // 45
    "086.wav, TRAIN", // 19
    "007.wav, TRAIN", // 62
    "kal16-3.wav, TRAIN", // 1c
  })
  void theFirstBitOfTheHashDecides(String name, Split half) {
    assertEquals(half, Split.of(name));
    assertTrue(half.takes(name) && Split.ALL.takes(name));
  }

  @Test
  void recordingsOfOneVoiceStayTogether() {
    assertEquals("slt", Split.group("SLT-0007.wav"));
    assertEquals("103", Split.group("103-1240-0000.wav"));
    assertEquals("086", Split.group("086.wav"));
  }

  @Test
  void refusesAnotherHalf() {
    var problem = assertThrows(IllegalArgumentException.class, () -> Split.ofId("dev"));
    assertEquals("expected train, held-out or all, found dev", problem.getMessage());
    assertEquals(Split.HELD_OUT, Split.ofId("held-out"));
  }
}
