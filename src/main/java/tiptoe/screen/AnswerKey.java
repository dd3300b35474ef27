package tiptoe.screen;

import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tiptoe.exam.Asked;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.finding.Question;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Labels;

/**
 * A key that answers the open question; it does so only while that is asked.
 *
 * @param key the key
 * @param words what is said instead
 */
record AnswerKey(char key, String words) {
  /** One key each, in the order of a keyboard. */
  private static final String NUMBERS = "1234567890";

  /** Those that answer which side. */
  static final List<AnswerKey> SIDES =
      Stream.of("left", "right", "both").map(side -> new AnswerKey(side.charAt(0), side)).toList();

  /** Those that answer which of two contradicting findings is right. */
  static final List<AnswerKey> WHICH =
      List.of(new AnswerKey('1', "the first one"), new AnswerKey('2', "the second one"));

  String offer() {
    return key + " \"" + words + "\"";
  }

  /** Those that answer what is asked now, beside yes and no; none while an offer goes before. */
  static List<AnswerKey> now(ExamRecord record) {
    if (record.phase() != Phase.LISTENING || record.toConfirm().isPresent()) {
      return List.of();
    }
    return record
        .openQuestion()
        .map(Asked::question)
        .map(
            question ->
                switch (question.kind()) {
                  case SIDE -> SIDES;
                  case CONTRADICTION -> question.about() == null ? List.<AnswerKey>of() : WHICH;
                  case DETAIL -> ofDetail(record, question);
                  default -> List.<AnswerKey>of();
                })
        .orElse(List.of());
  }

  private static List<AnswerKey> ofDetail(ExamRecord record, Question question) {
    if ("side".equals(question.detail())) {
      return SIDES;
    }
    List<String> values =
        record
            .protocol()
            .step(question.about().step())
            .detail(question.detail())
            .map(Detail::values)
            .filter(all -> all.size() <= NUMBERS.length() && !all.contains("yes"))
            .orElse(List.of());
    List<AnswerKey> keys = new ArrayList<>();
    for (String value : values) {
      keys.add(new AnswerKey(NUMBERS.charAt(keys.size()), words(question.detail(), value)));
    }
    return keys;
  }

  /** The value as it is said in answer; a test holds that the grammars understand it. */
  private static String words(String detail, String value) {
    return switch (value) {
      case "none" -> "nowhere";
      case "everywhere" -> "heard everywhere";
      default -> (detail.equals("radiation") ? "to the " : "") + Labels.of(value);
    };
  }

  /** The words that a key stands for; empty where it has none now. */
  static Optional<String> of(KeyStroke stroke, ExamRecord record) {
    if (stroke.getKeyType() != KeyType.Character || stroke.isCtrlDown()) {
      return Optional.empty();
    }
    char pressed = Character.toLowerCase(stroke.getCharacter());
    return now(record).stream()
        .filter(answer -> answer.key == pressed)
        .map(AnswerKey::words)
        .findFirst();
  }
}
