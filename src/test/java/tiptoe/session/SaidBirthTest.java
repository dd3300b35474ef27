package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.exam.Event;
import tiptoe.exam.Examination;
import tiptoe.exam.journal.MemorySink;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Word;
import tiptoe.wording.QuestionWording;

/** When the baby was born, said in an examination. */
class SaidBirthTest {
  private static final Understanding understanding = Hearing.understood();
  private static final Clock CLOCK =
      Clock.fixed(Instant.parse("2026-03-04T10:00:00Z"), ZoneOffset.UTC);

  private final ExamSession session =
      new ExamSession(
          understanding::interpreter,
          Examination.open(
              understanding.protocol(),
              CLOCK,
              new MemorySink(),
              QuestionWording::of,
              new Event.ExaminationOpened("1", null, "1", "1", null, null)),
          Settings.DEFAULT,
          ZonedDateTime.now(CLOCK));

  private void dictate(String text, double at) {
    session.dictate(text, understanding.typed().utterance(text), at);
  }

  private void type(String text) {
    session.type(text, understanding.typed().utterance(text), 0);
  }

  private void hear(String text, double start) {
    List<Word> words =
        Arrays.stream(text.split(" ")).map(word -> new Word(word, start, start + 2, 1)).toList();
    session.hear(new Hypothesis(start, start + 2, words), 0);
  }

  private Optional<String> born() {
    return session.record().baby().fact("born-at");
  }

  private List<String> asked() {
    return session.record().openQuestions().stream().map(one -> one.question().text()).toList();
  }

  @Test
  void isReadBackAndCountsFromAYesOn() {
    dictate("born yesterday at half past nine in the evening", 0);
    assertEquals(Optional.empty(), born());
    assertEquals(List.of("born on 3 March 2026 at 21:30 — yes or no?"), asked());
    assertTrue(session.record().contradictions().isEmpty());
    dictate("yes", 2);
    assertEquals(Optional.of("2026-03-03T21:30"), born());
    assertEquals(List.of(), asked());
    dictate("left clavicle crepitus", 3);
    BigDecimal hours = session.assessment().age(session.record().statements().get(0)).orElseThrow();
    assertEquals(12.5, hours.doubleValue(), "from 21:30 to 10:00");
    dictate("age three hours", 4);
    assertEquals(
        List.of(
            "age and time of birth do not fit: first born on 3 March 2026 at 21:30, then age 3 h;"
                + " keep the first or the second?"),
        asked());
  }

  @ParameterizedTest
  @ValueSource(strings = {"no", "left clavicle crepitus", "see you on monday then"})
  void isLetGoByAnythingElse(String next) {
    dictate("born yesterday at half past nine in the evening", 0);
    dictate(next, 2);
    dictate("yes", 4);
    assertEquals(Optional.empty(), born());
    assertEquals(List.of(), asked());
  }

  @Test
  void aYesThatComesLateConfirmsNothing() {
    hear("born yesterday at half past nine in the evening", 0);
    assertEquals(1, asked().size());
    hear("yes", 30);
    assertEquals(Optional.empty(), born());
  }

  @Test
  void whatWasTypedPlainlyCountsAtOnce() {
    type("born yesterday at half past nine in the evening");
    assertEquals(Optional.of("2026-03-03T21:30"), born());
    type("born on the third of march at quarter to six in the morning");
    assertEquals(
        List.of(
            "time of birth: first 3 March 2026 at 21:30, then 3 March 2026 at 05:45; is it"
                + " 3 March 2026 at 05:45, yes or no?"),
        asked());
  }

  @Test
  void whatWasTypedAndMayBeAnotherIsAsked() {
    type("born at ten past four");
    assertEquals(Optional.empty(), born());
    assertEquals(List.of("born on 4 March 2026 at 04:10 — yes or no?"), asked());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "mother was born at ten past four",
        "his brother was born yesterday at ten past four",
        "when was he born?",
        "born at about ten past four",
        "I think he was born at ten past four",
        "born on the third of january at ten past four"
      })
  void talkDoesNothing(String said) {
    dictate(said, 0);
    type(said);
    assertEquals(Optional.empty(), born());
    assertEquals(List.of(), asked());
  }

  @Test
  void aGestationStaysOne() {
    dictate("born at thirty nine weeks", 0);
    assertEquals(Optional.of("39+0"), session.record().baby().fact("gestation"));
  }
}
