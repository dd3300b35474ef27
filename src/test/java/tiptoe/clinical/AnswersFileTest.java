package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.exam.Answer;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;

class AnswersFileTest {
  private static AnswersFile parse(String json) {
    return AnswersFile.parse(json, Protocol.standard(), ZoneId.of("Europe/London"));
  }

  @Test
  void readsBabyTimeAndAnswers() {
    AnswersFile file =
        parse(
            """
            {"file": "ignored", "baby": {"sex": "girl", "gestation": "39+4", "age": 18},
             "examined-at": "2026-11-25T11:30:00+01:00",
             "answers": [
               {"step": "clavicle", "side": "left", "value": "crepitus"},
               {"step": "weight", "number": 3420, "unit": "g"},
               {"step": "temperature", "number": 36.8},
               {"step": "murmur", "value": "present", "details": {"grade": 2, "radiation": "none"}},
               {"step": "barlow", "side": "right", "value": "not-examined",
                "details": {"reason": "in a cast"}},
               {"step": "moro", "side": "left", "value": "asymmetric"}]}
            """);
    assertEquals(List.of(), file.problems());
    assertEquals(Map.of("sex", "girl", "gestation", "39+4", "age", "18"), file.baby().facts());
    assertEquals("2026-11-25T10:30Z[Europe/London]", file.examinedAt().toString());
    Answer first = file.answers().get(0);
    assertEquals(Side.LEFT, first.side());
    assertEquals("crepitus", first.value());
    assertEquals(1, first.statement());
    assertEquals(new Quantity(3420, "g"), file.answers().get(1).quantity());
    assertEquals(new Quantity(36.8, "°C"), file.answers().get(2).quantity());
    assertEquals(Map.of("grade", "2", "radiation", "none"), file.answers().get(3).details());
    assertEquals("not-examined", file.answers().get(4).value());
    assertEquals(6, file.answers().get(5).statement());
  }

  @Test
  void babyAndTimeMayBeLeftOut() {
    AnswersFile file = parse("{\"answers\": []}");
    assertEquals(List.of(), file.problems());
    assertEquals(Map.of(), file.baby().facts());
    assertNull(file.examinedAt());
  }

  @Test
  void readsTheContextOfAReplay() {
    AnswersFile file = parse("{\"context\": {\"sex\": \"boy\"}, \"answers\": []}");
    assertEquals(Map.of("sex", "boy"), file.baby().facts());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      textBlock =
          """
          {"step": "moro", "value": "gone"} | answer 1: expected a value of step moro, found gone
          {"step": "mroo", "value": "absent"} | answer 1: expected a step id, found mroo
          {"value": "absent"} | answer 1: expected a step id, found
          {"step": "clavicle", "value": "intact"} | answer 1: expected a side for step clavicle
          {"step": "clavicle", "side": "both", "value": "intact"} | answer 1: expected left or right, found both
          {"step": "tone", "side": "left", "value": "low"} | answer 1: expected no side for step tone, found left
          {"step": "tone"} | answer 1: expected a value for step tone
          {"step": "weight", "number": "3000"} | answer 1: expected a number for step weight
          {"step": "weight", "number": 3, "unit": "kg"} | answer 1: expected g for step weight, found kg
          {"step": "weight", "number": 34} | answer 1: expected a plausible number for step weight, found 34 g
          {"step": "saturation-foot", "number": 101} | answer 1: expected a plausible number for step saturation-foot, found 101 %
          {"step": "murmur", "value": "present", "details": {"loud": "yes"}} | answer 1: expected a detail of step murmur, found loud
          {"step": "murmur", "value": "present", "details": {"grade": "III"}} | answer 1: expected a whole number from 1 to 6 for murmur.grade, found III
          {"step": "murmur", "value": "present", "details": {"grade": 7}} | answer 1: expected a whole number from 1 to 6 for murmur.grade, found 7
          {"step": "murmur", "value": "present", "details": {"grade": 2.5}} | answer 1: expected a whole number from 1 to 6 for murmur.grade, found 2.5
          {"step": "murmur", "value": "present", "details": {"timing": "late"}} | answer 1: expected one of systolic, diastolic, pansystolic, continuous for murmur.timing, found late
          {"step": "murmur", "value": "present", "details": {"radiation": "back,heel"}} | answer 1: expected any of axilla, back, neck, none for murmur.radiation, found back,heel
          {"step": "lumbosacral", "value": "dimple", "details": {"from-anus": "16"}} | answer 1: expected a number from 0 to 15 for lumbosacral.from-anus, found 16
          """)
  void saysWhichAnswerCannotBeMeant(String answer, String problem) {
    assertEquals(
        List.of(problem),
        parse("{\"answers\": [" + answer + "]}").problems().stream().map(String::strip).toList());
  }

  @Test
  void saysWhatElseIsWrong() {
    assertEquals(
        List.of("expected an object with a list of answers"), parse("{\"answer\": []}").problems());
    assertEquals(List.of("expected an object with a list of answers"), parse("[]").problems());
    assertEquals(
        List.of("baby: expected girl or boy or undetermined for sex, found female"),
        parse("{\"baby\": {\"sex\": \"female\"}, \"answers\": []}").problems());
    assertEquals(
        List.of("expected a time such as 2026-11-25T10:30:00Z for examined-at, found today"),
        parse("{\"examined-at\": \"today\", \"answers\": []}").problems());
    assertEquals(
        List.of("expected JSON, found in line 1: Duplicate field 'answers'"),
        parse("{\"answers\": [], \"answers\": []}").problems());
    assertTrue(parse("{\n\"answers\": [}").problems().get(0).startsWith("expected JSON, found"));
    assertTrue(parse("{\"answers\": []} x").problems().get(0).startsWith("expected JSON, found"));
    assertEquals(1, parse("").problems().size());
  }

  @Test
  void stopsCountingProblems() {
    String many = "{\"answers\": [" + "{},".repeat(50) + "{}]}";
    assertEquals(20, parse(many).problems().size());
  }

  @Property
  void anyTextIsReadOrRefused(@ForAll String text) {
    AnswersFile file = parse(text);
    assertTrue(file.problems().size() == 1 || file.answers().isEmpty());
  }
}
