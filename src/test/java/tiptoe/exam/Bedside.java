package tiptoe.exam;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import tiptoe.exam.journal.MemorySink;
import tiptoe.finding.Command;
import tiptoe.finding.FindingNotation;
import tiptoe.finding.Outcome;
import tiptoe.finding.Question;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
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
            new Event.ExaminationOpened("e1", "Demo", "1", "0.1.0", null, null)));
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

  /** Says findings such as {@code barlow.left positive}. */
  public Changes find(String... findings) {
    return say("", false, findings);
  }

  public Changes correct(String... findings) {
    return say("correction ", true, findings);
  }

  private Changes say(String opening, boolean correction, String... findings) {
    return say(
        Arrays.stream(findings)
            .map(Bedside::spoken)
            .collect(Collectors.joining(" and ", opening, "")),
        Arrays.stream(findings).map(text -> finding(text, correction)).toArray(Meaning[]::new));
  }

  private static String spoken(String finding) {
    return finding.replaceFirst("^(\\S+)\\.(left|right) ", "$2 $1 ");
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
    return new Meaning.States(FindingNotation.parse(text), correction);
  }

  public static Meaning asks(Question.Kind kind, String detail, String about) {
    return new Meaning.Asks(
        new Question(
            kind, detail, FindingNotation.parse(about), null, List.of(), List.of(), null, null),
        false);
  }

  /** What stands, in the notation of findings. */
  public String answers() {
    return record().answers().stream()
        .map(answer -> answer.finding().toString())
        .collect(Collectors.joining(", "));
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
