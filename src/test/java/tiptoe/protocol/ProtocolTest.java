package tiptoe.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;

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
    var in = "- {region: head, steps: [{step: scalp}]}".getBytes(StandardCharsets.UTF_8);
    var problem =
        assertThrows(
            IllegalArgumentException.class,
            () -> ProtocolReader.read(new ByteArrayInputStream(in)));
    assertEquals(
        "expected either values or a measure in step scalp, found neither", problem.getMessage());
  }
}
