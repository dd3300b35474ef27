package tiptoe.exam;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import tiptoe.protocol.Protocol;

/**
 * Folds events into the record. Any sequence of events folds to something: an event that refers to
 * what is not there changes nothing, since a record must open whatever is in its journal.
 */
final class Fold {
  private static final Map<Class<?>, Handler<Event>> HANDLERS = new HashMap<>();

  static {
    FoldTalk.register();
    FoldReview.register();
    FoldSession.register();
  }

  /** What one kind of event does. */
  interface Handler<E extends Event> {
    void apply(Fold fold, Entry entry, E event);
  }

  static <E extends Event> void on(Class<E> kind, Handler<E> handler) {
    HANDLERS.put(kind, (fold, entry, event) -> handler.apply(fold, entry, kind.cast(event)));
  }

  final Protocol protocol;
  Event.ExaminationOpened opened;
  Phase phase = Phase.LISTENING;
  String region;
  Baby baby = Baby.UNKNOWN;
  Map<Integer, RecordedFinding> statements = new LinkedHashMap<>();
  Map<Integer, Utterance> utterances = new LinkedHashMap<>();
  Map<Integer, Asked> questions = new LinkedHashMap<>();
  Map<Integer, Remark> remarks = new LinkedHashMap<>();
  List<Gap> gaps = new ArrayList<>();
  List<FlagHistory> flags = new ArrayList<>();
  List<Signature> signatures = new ArrayList<>();
  List<Note> notes = new ArrayList<>();
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
    statements = byNumber(record.statements(), RecordedFinding::number);
    utterances = byNumber(record.utterances(), Utterance::number);
    questions = byNumber(record.questions(), Asked::number);
    remarks = byNumber(record.remarks(), Remark::number);
    gaps.addAll(record.gaps());
    flags.addAll(record.flags());
    signatures.addAll(record.signatures());
    notes.addAll(record.notes());
    ended = record.ended();
    entries.addAll(record.entries());
    entries.forEach(entry -> noteUndone(entry.event()));
  }

  private static <T> Map<Integer, T> byNumber(List<T> items, Function<T, Integer> number) {
    return items.stream()
        .collect(Collectors.toMap(number, item -> item, (a, b) -> b, LinkedHashMap::new));
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
      return true;
    }
    if (event instanceof Event.Redone redo) {
      redo.entries().forEach(undone::remove);
      return true;
    }
    return false;
  }

  /** Undoing takes the entries out of the fold and leaves the rest as if they had not been. */
  private void replay() {
    Fold again = new Fold(protocol);
    again.undone.addAll(undone);
    entries.forEach(again::handle);
    opened = again.opened;
    phase = again.phase;
    region = again.region;
    baby = again.baby;
    statements = again.statements;
    utterances = again.utterances;
    questions = again.questions;
    remarks = again.remarks;
    replace(gaps, again.gaps);
    replace(flags, again.flags);
    replace(signatures, again.signatures);
    replace(notes, again.notes);
    ended = again.ended;
  }

  private static <T> void replace(List<T> list, List<T> by) {
    list.clear();
    list.addAll(by);
  }

  private void handle(Entry entry) {
    Handler<Event> handler = HANDLERS.get(entry.event().getClass());
    if (undone.contains(entry.seq())) {
      FoldReview.keepUndone(this, entry);
    } else if (handler != null) {
      handler.apply(this, entry, entry.event());
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
        ended,
        entries);
  }
}
