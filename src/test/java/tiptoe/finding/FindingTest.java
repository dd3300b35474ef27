package tiptoe.finding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.protocol.Side;

class FindingTest {
  @Property(tries = 500)
  void whatIsWrittenIsReadAsTheSame(@ForAll("findings") Finding finding) {
    assertEquals(finding, FindingNotation.parse(finding.toString()));
  }

  @Provide
  Arbitrary<Finding> findings() {
    Arbitrary<String> id = Arbitraries.of("clavicle", "hip-abduction", "heart-rate", "s1");
    Arbitrary<Side> side = Arbitraries.of(Side.class).injectNull(0.4);
    Arbitrary<Map<String, String>> details =
        Arbitraries.maps(id, Arbitraries.strings().ofMaxLength(12)).ofMaxSize(3);
    Arbitrary<Quantity> quantity =
        Combinators.combine(
                Arbitraries.integers().between(-500_000, 500_000),
                Arbitraries.of("g", "cm", "°C", "%", "/min", "1"),
                Arbitraries.of(Bound.class).injectNull(0.5))
            .as((number, unit, bound) -> new Quantity(number / 100.0, unit, bound))
            .injectNull(0.5);
    return Combinators.combine(
            id,
            side,
            id,
            quantity,
            details,
            id.list().ofMaxSize(2),
            Arbitraries.of(true, false),
            Arbitraries.of(Source.class))
        .as(
            (step, onSide, value, number, told, denied, group, source) ->
                new Finding(
                    step,
                    onSide,
                    number == null ? value : null,
                    number,
                    told,
                    denied,
                    group,
                    source));
  }

  @Test
  void isWrittenAsInTheTables() {
    assertEquals(
        "clavicle.left swelling reason=\"in a \\\"cast\\\"\" size=2.5 !crepitus [region] [typed]",
        new Finding(
                "clavicle",
                Side.LEFT,
                "swelling",
                null,
                Map.of("size", "2.5", "reason", "in a \"cast\""),
                List.of("crepitus"),
                true,
                Source.TYPED)
            .toString());
    assertEquals(
        "weight 3420 g repeat=2",
        Finding.of("weight", new Quantity(3420, "g"))
            .withDetails(Map.of("repeat", "2"))
            .toString());
    assertEquals(
        "capillary-refill < 2 s",
        Finding.of("capillary-refill", new Quantity(2, "s", Bound.UNDER)).toString());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "",
        "clavicle",
        "clavicle.up crepitus",
        "weight <",
        "weight < heavy",
        "clavicle crepitus swelling",
        "weight 3420 g g",
        "weight 3420 !a g",
        "clavicle crepitus [guess]"
      })
  void refusesWhatIsNoFinding(String text) {
    assertThrows(IllegalArgumentException.class, () -> FindingNotation.parse(text));
  }
}
