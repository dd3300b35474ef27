package tiptoe.wording;

import java.util.List;
import java.util.stream.Stream;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.Command;

/** What is shown when the clinician asks what is missing, or for what was recorded. */
public final class CommandReply {
  private CommandReply() {}

  /** The lines of the answer; none where the command asks for nothing. */
  public static List<String> of(Command command, ExamRecord record, Words words) {
    Stream<String> lines =
        switch (command) {
          case SAY_MISSING -> missing(record, words);
          case READ_BACK -> recorded(record, words);
          default -> Stream.empty();
        };
    return lines.toList();
  }

  private static Stream<String> missing(ExamRecord record, Words words) {
    return record.missing().stream().map(slot -> "missing: " + words.name(slot));
  }

  private static Stream<String> recorded(ExamRecord record, Words words) {
    return record.statements().stream()
        .filter(said -> said.stands())
        .map(said -> said.statement())
        .filter(one -> record.protocol().step(one.step()).region().equals(record.region()))
        .map(words::of);
  }
}
