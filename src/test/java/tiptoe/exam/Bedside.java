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
import tiptoe.exam.journal.MemorySink;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Quantity;
import tiptoe.finding.Question;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.wording.QuestionWording;

/** An examination to talk to, with a clock that is set by hand. */
public final class Bedside {
  public static final Instant START = Instant.parse("2026-03-01T09:00:00Z");

  public final SetClock clock;
  public final Examination exam;
  private double second;

  /** A new examination in memory. */
  public Bedside() {
    this(new SetClock(), new MemorySink());
  }

  private Bedside(SetClock clock, EventSink sink) {
    this(
        clock,
        Examination.open(
            Protocol.standard(),
            clock,
            sink,
            QuestionWording::of,
            new Event.ExaminationOpened("e1", "Demo", "1", "0.1.0", null)));
  }

  /** An examination that is open. */
  public Bedside(SetClock clock, Examination exam) {
    this.clock = clock;
    this.exam = exam;
  }

  public ExamRecord record() {
    return exam.record();
  }

  /** Says something that was understood as these meanings. */
  public Changes say(String text, Meaning... meanings) {
    return hear(text, Outcome.ACCEPTED, meanings);
  }

  public Changes hear(String text, Outcome outcome, Meaning... meanings) {
    second += 3;
    clock.now = START.plus(Duration.ofMillis((long) (second * 1000)));
    Heard heard = new Heard(second - 2, second, text, List.of(), outcome, null);
    Dialogue dialogue = exam.dialogue();
    return exam.hear(heard, new Interpretation(List.of(meanings), List.of(), dialogue));
  }

  /** Says findings such as {@code left barlow positive}. */
  public Changes find(String... findings) {
    return say(
        String.join(" and ", findings),
        Arrays.stream(findings).map(text -> finding(text, false)).toArray(Meaning[]::new));
  }

  public Changes correct(String... findings) {
    return say(
        "correction " + String.join(" and ", findings),
        Arrays.stream(findings).map(text -> finding(text, true)).toArray(Meaning[]::new));
  }

  public Changes command(Command command) {
    return say(command.id(), new Meaning.Instruction(command));
  }

  public Changes fact(String id, String value) {
    return say(id + " " + value, new Meaning.Fact(id, value));
  }

  public Changes correctFact(String id, String value) {
    return say("correction " + id + " " + value, new Meaning.Fact(id, value, true));
  }

  public static Meaning finding(String text, boolean correction) {
    return new Meaning.States(statement(text), correction);
  }

  /** Reads {@code [left|right] step value [detail=value…] [no:value…] [group]}. */
  public static Finding statement(String text) {
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
    return new Finding(
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
        tiptoe.finding.Source.GRAMMAR);
  }

  public static Meaning asks(Question.Kind kind, String detail, String about) {
    return new Meaning.Asks(
        new Question(kind, detail, statement(about), null, List.of(), null, null), false);
  }

  /** What stands, one finding a line of the form that {@link #statement} reads. */
  public String answers() {
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

  public String question() {
    return record().openQuestion().map(asked -> asked.question().text()).orElse("");
  }

  public String statuses() {
    return record().statements().stream()
        .map(said -> said.number() + " " + said.status().id())
        .collect(Collectors.joining(", "));
  }

  public static final class SetClock extends Clock {
    public Instant now = START;

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
