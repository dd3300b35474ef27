package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.exam.Handover;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;

/** What was said and is not settled raises its flag as well, and silences none. */
class UnsettledFlagsTest {
  private static Assessment assess(String standing, String unsettled) {
    return Assessor.of(Protocol.standard())
        .assess(
            Bedside.baby("age=30"),
            Bedside.answers(standing),
            Bedside.answers(unsettled),
            Handover.of(Bedside.baby("age=30")),
            Settings.DEFAULT,
            Bedside.NOW);
  }

  private static String flags(Assessment assessment) {
    return assessment.flags().stream()
        .map(f -> f.level().id() + " " + f.rule() + (f.provisional() ? "?" : ""))
        .collect(Collectors.joining(", "));
  }

  // Standing, not settled, all flags; a question mark for provisional ones.
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          colour pink | colour central-cyanosis | urgent central-cyanosis?
          femoral-pulse.left strong; femoral-pulse.right strong | femoral-pulse.right absent | urgent femoral-pulse-weak?
          red-reflex.left present | red-reflex.left absent | urgent red-reflex-abnormal?
          murmur none | murmur present | arrange murmur?
          saturation-right-hand 98 %; saturation-foot 97 % | saturation-right-hand 80 %; saturation-foot 79 % | urgent saturation-screen-failed-2025?
          saturation-right-hand 98 %; saturation-foot 97 % | saturation-foot 79 % | urgent saturation-screen-failed-2025?
          temperature 36.8 °C | temperature 31 °C | emergency hypothermia-severe?
          temperature 31 °C | temperature 36.8 °C | emergency hypothermia-severe
          temperature 36.8 °C | temperature 31 °C; temperature 38.4 °C | emergency hypothermia-severe?, urgent fever?
          heart-rate 85 /min; alertness asleep-rousable | alertness alert | note heart-rate-low?
          colour central-cyanosis | breathing grunting | emergency cyanosis-with-distress?, urgent central-cyanosis, urgent early-infection-treat?
          colour central-cyanosis; breathing grunting | breathing easy | emergency cyanosis-with-distress, urgent early-infection-treat
          testis.left undescended; testis.right descended | testis.right undescended | emergency sex-not-to-be-assigned?, arrange testis-undescended
          barlow.left positive | barlow.left negative | urgent hip-unstable
          | skin vesicles | urgent vesicles?
          | tone normal |
          """)
  void raisesWhatIsNotSettledBesideWhatStands(String standing, String unsettled, String expected) {
    assertEquals(expected == null ? "" : expected, flags(assess(standing, unsettled)));
  }

  @Test
  void withoutUnsettledReadingsEverythingIsAsBefore() {
    assertEquals(
        Bedside.assess("age=30", "murmur present; tone low"),
        assess("murmur present; tone low", ""));
  }

  @Test
  void changesNothingButTheFlags() {
    Assessment before = assess("saturation-right-hand 98 %; saturation-foot 97 %", "");
    Assessment with =
        assess(
            "saturation-right-hand 98 %; saturation-foot 97 %",
            "saturation-foot 80 %; murmur present");
    assertEquals(before.results(), with.results());
    assertEquals(before.plan(), with.plan());
    assertEquals(before.missing(), with.missing());
    assertEquals(before.needs(), with.needs());
  }

  @Test
  void aNumberThatIsNotSettledLooksAbnormalBesideThoseThatStand() {
    Assessment one = assess("temperature 36.8 °C; heart-rate 45 /min", "temperature 31 °C");
    assertEquals(
        "heart-rate 2 LOW, temperature 1 LOW",
        one.abnormalNumbers().stream()
            .map(a -> a.step() + " " + a.statement() + " " + a.direction())
            .sorted()
            .collect(Collectors.joining(", ")));
    assertEquals(List.of(), assess("temperature 36.8 °C", "tone low").abnormalNumbers());
  }

  @Test
  void theRecordSaysWhichFlagsAreProvisional() {
    JsonNode flags = new ObjectMapper().valueToTree(assess("tone low", "skin vesicles").flags());
    List<String> provisional = List.of(flags.get(0).toString(), flags.get(1).toString());
    assertEquals("vesicles", flags.get(1).path("rule").asText());
    assertTrue(flags.get(1).path("provisional").asBoolean(), provisional.toString());
    assertFalse(flags.get(0).has("provisional"), provisional.toString());
  }
}
