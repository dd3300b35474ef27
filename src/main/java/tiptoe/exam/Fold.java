package tiptoe.exam;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.protocol.Protocol;

/** The record while {@linkplain Event#applyTo events} are folded into it. */
public final class Fold {
  final Protocol protocol;
  Event.ExaminationOpened opened;
  Phase phase = Phase.LISTENING;
  String region;
  Baby baby = Baby.UNKNOWN;
  final Map<Integer, RecordedFinding> statements = new LinkedHashMap<>();
  final Map<Integer, Utterance> utterances = new LinkedHashMap<>();
  final Map<Integer, Asked> questions = new LinkedHashMap<>();
  final Map<Integer, Remark> remarks = new LinkedHashMap<>();
  final List<UnheardSound> gaps = new ArrayList<>();
  final List<FlagHistory> flags = new ArrayList<>();
  final List<Signature> signatures = new ArrayList<>();
  final List<Note> notes = new ArrayList<>();
  final Map<String, Handled> ticked = new LinkedHashMap<>();
  Instant ended;
  private final List<Entry> entries = new ArrayList<>();
  private final Set<Long> undone = new HashSet<>();

  Fold(Protocol protocol) {
    this.protocol = protocol;
  }

  Fold(ExamRecord record) {
    this(record.protocol());
    opened = record.opened();
    phase = record.phase();
    region = record.region();
    baby = record.baby();
    record.statements().forEach(one -> statements.put(one.number(), one));
    record.utterances().forEach(one -> utterances.put(one.number(), one));
    record.questions().forEach(one -> questions.put(one.number(), one));
    record.remarks().forEach(one -> remarks.put(one.number(), one));
    gaps.addAll(record.gaps());
    flags.addAll(record.flags());
    signatures.addAll(record.signatures());
    notes.addAll(record.notes());
    ticked.putAll(record.ticked());
    ended = record.ended();
    entries.addAll(record.entries());
    entries.forEach(entry -> noteUndone(entry.event()));
  }

  void apply(Entry entry) {
    entries.add(entry);
    if (noteUndone(entry.event())) {
      replay();
    } else {
      handle(entry);
    }
  }

  private boolean noteUndone(Event event) {
    if (event instanceof Event.Undone undo) {
      undone.addAll(undo.entries());
    } else if (event instanceof Event.Redone redo) {
      redo.entries().forEach(undone::remove);
    } else {
      return false;
    }
    return true;
  }

  /** Undoing takes the entries out of the fold and leaves the rest as if they had not been. */
  private void replay() {
    opened = null;
    phase = Phase.LISTENING;
    region = null;
    baby = Baby.UNKNOWN;
    ended = null;
    Stream.of(statements, utterances, questions, remarks, ticked).forEach(Map::clear);
    Stream.of(gaps, flags, signatures, notes).forEach(List::clear);
    entries.forEach(this::handle);
  }

  private void handle(Entry entry) {
    if (undone.contains(entry.seq())) {
      keepUndone(entry);
    } else {
      entry.event().applyTo(this, entry);
    }
  }

  /** What was undone stays visible; its number is never given again. */
  private void keepUndone(Entry entry) {
    if (entry.event() instanceof Event.QuestionAsked asked) {
      questions.put(asked.number(), Asked.of(asked, entry.at()).closed("undone"));
    } else if (entry.event() instanceof Event.StatementMade made) {
      statements.put(made.number(), recorded(made, entry.at(), Status.UNDONE));
    }
  }

  RecordedFinding recorded(Event.StatementMade made, Instant at, Status status) {
    Optional<Heard> heard =
        Optional.ofNullable(made.utterance()).map(utterances::get).map(Utterance::heard);
    return new RecordedFinding(
        made.number(),
        made.statement(),
        made.correction(),
        at,
        made.utterance(),
        heard.map(Heard::text).orElse(""),
        heard.map(Heard::start).orElse(null),
        status,
        made.of(),
        made.author());
  }

  void note(Entry entry, String text) {
    notes.add(new Note(entry.at(), text));
  }

  void close(int question, String outcome) {
    questions.computeIfPresent(question, (number, asked) -> asked.closed(outcome));
  }

  void settle(int number, Effect effect, List<Integer> of) {
    RecordedFinding said = statements.get(number);
    if (said == null) {
      return;
    }
    statements.put(number, said.with(said.status(), of));
    settle(number, Status.of(effect));
    if (effect == Effect.STANDS) {
      of.stream()
          .filter(replaced -> replaced != number)
          .forEach(replaced -> settle(replaced, Status.REPLACED));
    }
  }

  /** Gives a statement and all that confirm it a status. */
  void settle(int number, Status status) {
    RecordedFinding said = statements.get(number);
    if (said == null || said.status() == Status.UNDONE) {
      return;
    }
    statements.put(number, said.with(status, said.of()));
    if (status != Status.STANDS && status != Status.CONFIRMS && status != Status.WAITS) {
      for (RecordedFinding other : List.copyOf(statements.values())) {
        if (other.status() == Status.CONFIRMS && other.of().contains(number)) {
          statements.put(other.number(), other.with(status, other.of()));
        }
      }
    }
  }

  ExamRecord toRecord() {
    return new ExamRecord(
        protocol,
        opened,
        phase,
        region,
        baby,
        List.copyOf(statements.values()),
        List.copyOf(utterances.values()),
        List.copyOf(questions.values()),
        List.copyOf(remarks.values()),
        gaps,
        flags,
        signatures,
        notes,
        ticked,
        ended,
        entries);
  }
}
