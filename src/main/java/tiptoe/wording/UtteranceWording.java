package tiptoe.wording;

import java.util.List;
import java.util.function.Function;
import java.util.stream.Stream;
import tiptoe.exam.Asked;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Offer;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Utterance;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;

/** Shows utterance by utterance what was heard and what it came to. */
public final class UtteranceWording {
  private UtteranceWording() {}

  public static String of(ExamRecord record, Words words) {
    StringBuilder text = new StringBuilder();
    record.utterances().forEach(utterance -> text.append(of(record, utterance, words)));
    return text.toString();
  }

  public static String of(ExamRecord record, Utterance utterance, Words words) {
    return text(record, utterance, words, statement -> "");
  }

  /** The same with how each statement was understood. */
  public static String withSources(ExamRecord record, Utterance utterance, Words words) {
    return text(record, utterance, words, statement -> "  [" + statement.source().id() + "]");
  }

  private static String text(
      ExamRecord record, Utterance utterance, Words words, Function<Finding, String> behind) {
    StringBuilder text = new StringBuilder();
    text.append("\"%s\"  %s".formatted(utterance.heard().text(), utterance.heard().outcome().id()));
    String reason = utterance.heard().reason();
    if (reason != null && !reason.isBlank()) {
      text.append(" (").append(reason).append(')');
    }
    text.append('\n');
    statements(record, utterance)
        .forEach(
            statement ->
                text.append("  ")
                    .append(words.of(statement))
                    .append(behind.apply(statement))
                    .append('\n'));
    utterance.facts().stream()
        .map(words::offered)
        .forEach(fact -> text.append("  ").append(fact).append('\n'));
    if (record.toConfirm().filter(offer -> isFor(offer, utterance)).isPresent()) {
      text.append("  ? record that — yes or no?\n");
    }
    record.questions().stream()
        .filter(asked -> Integer.valueOf(utterance.number()).equals(asked.utterance()))
        .map(Asked::question)
        .forEach(
            question -> text.append("  ? ").append(words.spelled(question.text())).append('\n'));
    return text.toString();
  }

  private static boolean isFor(Offer offer, Utterance utterance) {
    return offer.way() == Offer.Way.ALONE && offer.utterances().contains(utterance);
  }

  /** What an utterance stated, or seems to state where it is unsure. */
  public static List<Finding> statements(ExamRecord record, Utterance utterance) {
    Stream<Finding> said =
        utterance.heard().outcome() == Outcome.UNSURE
            ? utterance.seems()
            : record.statements().stream()
                .filter(one -> Integer.valueOf(utterance.number()).equals(one.utterance()))
                .map(RecordedFinding::statement);
    return said.toList();
  }
}
