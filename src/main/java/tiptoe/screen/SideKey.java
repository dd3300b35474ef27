package tiptoe.screen;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.Arrays;
import java.util.Optional;
import tiptoe.exam.Asked;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.language.Question;

/** The keys that answer which side; they do so only while that is asked. */
enum SideKey {
  LEFT("left"),
  RIGHT("right"),
  BOTH("both");

  private final String word;

  SideKey(String word) {
    this.word = word;
  }

  /** Key and word. */
  String offer() {
    return word.charAt(0) + " \"" + word + "\"";
  }

  /** Whether the side is what is asked now. */
  static boolean asked(ExamRecord record) {
    return record.phase() == Phase.LISTENING
        && record.openQuestion().map(Asked::question).filter(SideKey::asksSide).isPresent();
  }

  private static boolean asksSide(Question question) {
    return question.kind() == Question.Kind.SIDE || "side".equals(question.detail());
  }

  /** The word that a key stands for; empty where it has none now. */
  static Optional<String> of(KeyStroke stroke, ExamRecord record) {
    if (stroke.getKeyType() != KeyType.Character || stroke.isCtrlDown() || !asked(record)) {
      return Optional.empty();
    }
    char pressed = Character.toLowerCase(stroke.getCharacter());
    return Arrays.stream(values())
        .map(key -> key.word)
        .filter(word -> word.charAt(0) == pressed)
        .findFirst();
  }
}
