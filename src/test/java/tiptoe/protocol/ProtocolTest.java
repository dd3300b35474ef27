package tiptoe.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProtocolTest {
  private final Protocol protocol = Protocol.standard();

  @Test
  void goesFromGeneralToNeurologyInTheOrderOfTheBody() {
    assertEquals(
        "general measurements skin head eyes face ears nose mouth neck clavicles chest lungs heart"
            + " pulses abdomen umbilicus arms legs hips back genitalia anus neurology",
        String.join(" ", protocol.regions().stream().map(Region::id).toList()));
  }

  @Test
  void everyStepThatIsNotMeasuredHasANormalValueFirst() {
    protocol
        .steps()
        .filter(step -> !step.isMeasured())
        .forEach(step -> assertEquals(Norm.NORMAL, step.values().get(0).norm(), step.id()));
  }

  @Test
  void keySteps() {
    assertEquals(
        "anterior-fontanelle red-reflex palate clavicle murmur femoral-pulse umbilical-skin barlow"
            + " ortolani lumbosacral testis anus moro",
        String.join(" ", protocol.steps().filter(Step::key).map(Step::id).toList()));
  }

  @Test
  void aBoysStepAppliesUntilAnotherSexIsStated() {
    Step testis = protocol.step("testis");
    assertTrue(testis.appliesTo(null));
    assertTrue(testis.appliesTo("boy"));
    assertTrue(!testis.appliesTo("girl"));
  }

  @Test
  void namesTheStepThatHasNeitherValuesNorAMeasure() {
    var in =
        "{facts: [], regions: [{region: head, steps: [{step: scalp}]}]}"
            .getBytes(StandardCharsets.UTF_8);
    var problem =
        assertThrows(
            IllegalArgumentException.class,
            () -> ProtocolReader.read(new ByteArrayInputStream(in)));
    assertEquals(
        "expected either values or a measure in step scalp, found neither", problem.getMessage());
  }

  @ParameterizedTest
  @CsvSource({
    "age, 672, true",
    "age, 672.5, false",
    "age, -1, false",
    "gestation, 20+0, true",
    "gestation, 45+6, true",
    "gestation, 46+0, false",
    "gestation, 39+7, false",
    "born-at, 2026-03-01T04:30:00Z, true",
    "born-at, 2026-03-01T04:30, true",
    "born-at, 2026-03-01, false",
    "sex, boy, true",
    "sex, male, false",
    "label, ' ', false",
    "length, 50, false",
  })
  void aFactHasOneRange(String fact, String value, boolean fits) {
    assertEquals(fits, protocol.problem(fact, value).isEmpty());
  }

  @Test
  void aFactWithoutWhatItsKindNeedsIsRefused() {
    assertThrows(
        IllegalArgumentException.class,
        () -> new Fact("age", "age", Fact.Kind.NUMBER, List.of(), Map.of(), null, false));
    assertThrows(
        IllegalArgumentException.class,
        () -> new Fact("sex", "sex", Fact.Kind.CHOICE, List.of(), Map.of(), null, false));
  }
}
