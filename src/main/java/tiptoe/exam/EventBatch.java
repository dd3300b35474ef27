package tiptoe.exam;

import java.time.Instant;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import tiptoe.finding.Question;

/** Events that are decided on but not yet kept, and the record as it will be with them. */
final class EventBatch {
  private final ExamRecord before;
  private final ZonedDateTime at;
  private final QuestionText words;
  private final List<Event> events = new ArrayList<>();
  private long seq;
  private Fold fold;
  private ExamRecord view;

  EventBatch(ExamRecord record, ZonedDateTime at, QuestionText words) {
    before = record;
    this.at = at;
    this.words = words;
    seq = record.entries().size();
    view = record;
  }

  void add(Event event) {
    events.add(event);
    seq++;
    fold = fold == null ? new Fold(before) : fold;
    fold.apply(new Entry(seq, at.toInstant(), Entry.NONE_BEFORE, event));
    view = null;
  }

  /** Asks a question for which no statement and no fact waits. */
  void ask(Question question, boolean correction, Integer utterance) {
    ask(question, correction, utterance, null, List.of(), null, null);
  }

  /** Asks a question; the parameters are those of {@link Event.QuestionAsked}. */
  void ask(
      Question question,
      boolean correction,
      Integer utterance,
      Integer statement,
      List<Integer> against,
      String fact,
      String value) {
    Event.QuestionAsked asked =
        new Event.QuestionAsked(
            nextQuestion(), question, correction, utterance, statement, against, fact, value);
    add(asked.withText(words.of(asked, record())));
  }

  /** The record with all that was added. */
  ExamRecord record() {
    if (view == null) {
      view = fold.toRecord();
    }
    return view;
  }

  Instant at() {
    return at.toInstant();
  }

  /** Where the baby is examined. */
  ZoneId zone() {
    return at.getZone();
  }

  List<Event> events() {
    return List.copyOf(events);
  }

  int nextStatement() {
    return record().statements().stream().mapToInt(RecordedFinding::number).max().orElse(0) + 1;
  }

  int nextQuestion() {
    return record().questions().stream().mapToInt(Asked::number).max().orElse(0) + 1;
  }

  int nextUtterance() {
    return record().utterances().stream().mapToInt(Utterance::number).max().orElse(0) + 1;
  }

  int nextRemark() {
    return record().remarks().stream().mapToInt(Remark::number).max().orElse(0) + 1;
  }
}
