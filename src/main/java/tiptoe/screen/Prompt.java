package tiptoe.screen;

import java.util.List;
import java.util.Optional;
import tiptoe.exam.Asked;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Slot;
import tiptoe.finding.Question;
import tiptoe.protocol.Labels;
import tiptoe.wording.FindingWording;

/**
 * The one thing that the examination waits for.
 *
 * @param headline in a word or two
 * @param text in full
 * @param answers what can be said to it; empty where the text says so itself
 */
record Prompt(String headline, String text, String answers) {

  /** Empty while nothing is waited for. */
  static Optional<Prompt> of(ExamRecord record) {
    return switch (record.phase()) {
      case PAUSED ->
          Optional.of(
              new Prompt("paused", "Nothing is heard and nothing is kept.", Voice.RESUME.quoted()));
      case REMARK ->
          Optional.of(
              new Prompt(
                  "remark", "All that is said is kept as a remark.", Voice.END_REMARK.quoted()));
      case ENDING -> Optional.of(ending(record));
      default -> record.openQuestion().map(Asked::question).map(Prompt::of);
    };
  }

  private static Prompt ending(ExamRecord record) {
    FindingWording phrasing = new FindingWording(record.protocol());
    List<Slot> missing = record.missingKeySteps();
    String names =
        missing.stream()
            .map(slot -> phrasing.name(slot.step(), slot.side()))
            .collect(java.util.stream.Collectors.joining(", "));
    String count = missing.size() + (missing.size() == 1 ? " key step is" : " key steps are");
    return new Prompt(
        "end anyway?",
        count + " missing: " + names,
        Voice.END.quoted() + " or \"yes\" to end, \"no\" to go on");
  }

  private static Prompt of(Question question) {
    return new Prompt(headline(question), question.text(), answers(question));
  }

  private static String headline(Question question) {
    return switch (question.kind()) {
      case SIDE -> "which side?";
      case DETAIL -> Labels.of(question.detail()) + "?";
      case NUMBER -> "what number?";
      case CONTRADICTION -> "which is right?";
      case STEP -> "of what?";
    };
  }

  // The text of the other questions says itself what can be answered.
  private static String answers(Question question) {
    return question.kind() == Question.Kind.NUMBER
        ? "the number again, or \"no\" to leave it out"
        : "";
  }
}
