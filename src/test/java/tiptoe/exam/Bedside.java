package tiptoe.exam;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import tiptoe.language.Command;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.language.Quantity;
import tiptoe.language.Question;
import tiptoe.language.Statement;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;

/** An examination in memory, with a clock that is set by hand. */
final class Bedside {
  static final Instant START = Instant.parse("2026-03-01T09:00:00Z");

  final MemorySink sink = new MemorySink();
  final SetClock clock = new SetClock();
  final Examination exam =
      Examination.open(
          Protocol.standard(),
          clock,
          sink,
          new Event.ExaminationOpened("e1", "Demo", "1", "0.1.0", null));
  private double second;

  ExamRecord record() {
    return exam.record();
  }

  /** Says something that was understood as these meanings. */
  Changes say(String text, Meaning... meanings) {
    return hear(text, Outcome.ACCEPTED, meanings);
  }

  Changes hear(String text, Outcome outcome, Meaning... meanings) {
    second += 3;
    clock.now = START.plus(Duration.ofMillis((long) (second * 1000)));
    Heard heard = new Heard(second - 2, second, text, List.of(), outcome, null);
    Dialogue dialogue = exam.dialogue();
    return exam.hear(heard, new Interpretation(List.of(meanings), List.of(), dialogue));
  }

  /** Says findings such as {@code left barlow positive}. */
  Changes find(String... findings) {
    return say(
        String.join(" and ", findings),
        Arrays.stream(findings).map(text -> finding(text, false)).toArray(Meaning[]::new));
  }

  Changes correct(String... findings) {
    return say(
        "correction " + String.join(" and ", findings),
        Arrays.stream(findings).map(text -> finding(text, true)).toArray(Meaning[]::new));
  }

  Changes command(Command command) {
    return say(command.id(), new Meaning.Instruction(command));
  }

  Changes fact(String id, String value) {
    return say(id + " " + value, new Meaning.Fact(id, value));
  }

  static Meaning finding(String text, boolean correction) {
    return new Meaning.Finding(statement(text), correction);
  }

  /** Reads {@code [left|right] step value [detail=value…] [no:value…] [group]}. */
  static Statement statement(String text) {
    List<String> words = new ArrayList<>(List.of(text.split(" ")));
    Side side =
        words.get(0).equals("left") || words.get(0).equals("right")
            ? Side.of(words.remove(0))
            : null;
    String step = words.remove(0);
    String value = words.remove(0);
    var measure = Protocol.standard().find(step).map(known -> known.measure()).orElse(null);
    Quantity quantity =
        measure == null || !value.matches("-?[\\d.]+")
            ? null
            : new Quantity(Double.parseDouble(value), measure.unit());
    return new Statement(
        step,
        side,
        quantity == null ? value : null,
        quantity,
        words.stream()
            .filter(word -> word.contains("="))
            .map(word -> word.split("="))
            .collect(Collectors.toMap(pair -> pair[0], pair -> pair[1])),
        words.stream().filter(w -> w.startsWith("no:")).map(w -> w.substring(3)).toList(),
        words.contains("group"),
        tiptoe.language.Source.GRAMMAR);
  }

  static Meaning asks(Question.Kind kind, String detail, String about) {
    return new Meaning.Asks(new Question(kind, detail, statement(about), null, "?"), false);
  }

  /** What stands, one finding a line of the form that {@link #statement} reads. */
  String answers() {
    return record().answers().stream().map(Bedside::text).collect(Collectors.joining(", "));
  }

  static String text(Answer answer) {
    StringBuilder text = new StringBuilder();
    text.append(answer.side() == null ? "" : answer.side().id() + " ").append(answer.step());
    text.append(' ').append(answer.value() == null ? answer.quantity().text() : answer.value());
    answer.details().forEach((id, value) -> text.append(' ').append(id).append('=').append(value));
    answer.denied().forEach(value -> text.append(" no:").append(value));
    return text.append(answer.group() ? " group" : "").toString();
  }

  String question() {
    return record().openQuestion().map(asked -> asked.question().text()).orElse("");
  }

  String statuses() {
    return record().statements().stream()
        .map(said -> said.number() + " " + said.status().id())
        .collect(Collectors.joining(", "));
  }

  static final class SetClock extends Clock {
    Instant now = START;

    @Override
    public ZoneId getZone() {
      return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
      return this;
    }

    @Override
    public Instant instant() {
      return now;
    }
  }
}
