package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AgreementTest {
  @ParameterizedTest
  @CsvSource({
    "hips are stable, true",
    "hips is stable, false",
    "clavicle look crunchy, false",
    "hips dislocates, false",
    "hip dislocates, true",
    "labia are fused, true",
    "anus is patent, true",
    "brachial and femoral are equal, true",
    "cannot feel the brachial pulse, true",
    "sutures overriding, true"
  })
  void tellsGoodEnglishInNumber(String wording, boolean good) {
    assertEquals(good, Agreement.holds(wording));
  }
}
