package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import tiptoe.audio.Tone;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Word;

/** Which tone tells what became of an utterance. */
class FeedbackTest {
  private static final Understanding understanding = Hearing.understood();

  private final ExamSession session = Sessions.inMemory(understanding, Settings.DEFAULT);
  private double at = 1;

  /** The tone behind words; a second each for words that are no phrase. */
  private Optional<Tone> hear(Feedback feedback, String text) {
    List<Word> words =
        Arrays.stream(text.split(" ")).map(word -> new Word(word, at, ++at, 1)).toList();
    double start = words.get(0).start();
    return feedback.tone(session.hear(new Hypothesis(start, at, words), 0));
  }

  @Test
  void eachOutcomeHasItsOwnAndTalkHasNone() {
    try (Feedback feedback = Feedback.of(Settings.DEFAULT, session)) {
      assertEquals(Optional.of(Tone.ACCEPTED), hear(feedback, "gums normal"));
      assertEquals(Optional.of(Tone.QUESTION), hear(feedback, "clavicle crepitus"));
      assertEquals(Optional.of(Tone.DONE), hear(feedback, "cross that out"));
      assertEquals(Optional.of(Tone.UNSURE), hear(feedback, "left barlow negative [unk]"));
      assertEquals(
          Optional.of(Tone.NOT_UNDERSTOOD),
          hear(feedback, "[unk] [unk] [unk] [unk] left barlow negative"));
      assertEquals(Optional.of(Tone.FLAG), hear(feedback, "left barlow positive"));
      assertEquals(Optional.empty(), hear(feedback, "[unk] [unk]"));
      assertEquals(Optional.empty(), hear(feedback, "[unk] [unk] [unk] yes"));
      assertEquals(Optional.empty(), hear(feedback, "yes"));
      assertEquals(Optional.of(Tone.PAUSED), hear(feedback, "pause the recording"));
      assertEquals(Optional.empty(), hear(feedback, "left barlow negative"));
    }
  }
}
