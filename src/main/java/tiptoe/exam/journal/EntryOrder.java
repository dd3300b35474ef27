package tiptoe.exam.journal;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;

/**
 * Whether the entries of a record come in an order that the tool writes. The chain tells that none
 * was changed; whoever can write the file can add others behind the last, and this tells that such
 * do not count behind a signature. There only an addendum may follow, or the removal of exactly the
 * sound that was signed.
 */
final class EntryOrder {
  private final List<String> problems = new ArrayList<>();
  private Entry signed;
  private boolean sealed;
  private boolean soundRemoved;

  private EntryOrder(ExamRecord record) {
    boolean first = true;
    for (Entry entry : record.entries()) {
      if (first != entry.event() instanceof Event.ExaminationOpened) {
        problem(
            entry,
            first
                ? "expected the opening of an examination"
                : "another examination begins in the same record");
      }
      first = false;
      take(entry);
    }
  }

  /** What is wrong, for people; empty when nothing is. */
  static List<String> problems(ExamRecord record) {
    return List.copyOf(new EntryOrder(record).problems);
  }

  /** Whether the sound that was signed last was removed behind that signature, as it may be. */
  static boolean removedSound(ExamRecord record) {
    return new EntryOrder(record).soundRemoved;
  }

  private void problem(Entry entry, String text) {
    problems.add("entry " + entry.seq() + ": " + text);
  }

  private void take(Entry entry) {
    Event event = entry.event();
    if (event instanceof Event.Signed now) {
      sign(entry, now);
    } else if (event instanceof Event.AddendumStarted) {
      if (!sealed) {
        problem(entry, "an addendum to what was not signed");
      }
      sealed = false;
    } else if (event instanceof Event.AudioRemoved removal) {
      remove(entry, removal);
    } else if (signed != null && !isAside(event)) {
      if (sealed) {
        problem(entry, EventLines.kind(event) + " stands behind the signature, in no addendum");
      } else if (!(event instanceof Event.Edit)) {
        problem(entry, EventLines.kind(event) + " is nothing that an addendum holds");
      }
    }
    undoing(entry);
  }

  private void sign(Entry entry, Event.Signed now) {
    if (sealed) {
      problem(entry, "a second signature, without an addendum");
    }
    if (now.name() == null || now.role() == null) {
      problem(entry, "a signature without a name or a role");
    }
    if (signed != null && !soundRemoved) {
      Map<String, String> before = ((Event.Signed) signed.event()).audio();
      if (!before.equals(now.audio())) {
        problem(entry, "it signs other sound than the signature before it");
      }
    }
    soundRemoved = soundRemoved && now.audio().isEmpty();
    signed = entry;
    sealed = true;
  }

  private void remove(Entry entry, Event.AudioRemoved removal) {
    if (!sealed || soundRemoved) {
      problem(entry, "a removal of sound that is not right behind a signature");
    } else if (!Set.copyOf(removal.files())
        .equals(((Event.Signed) signed.event()).audio().keySet())) {
      problem(entry, "a removal of other sound than was signed");
    } else {
      soundRemoved = true;
    }
  }

  // Notes of the tool that change nothing of what was found.
  private static boolean isAside(Event event) {
    return event instanceof Event.ClockWentBack
        || event instanceof Event.TailSetAside tail
            && tail.file() != null
            && tail.file().matches("unfinished-\\d+\\.txt");
  }

  private void undoing(Entry entry) {
    Set<Long> named = new HashSet<>();
    if (entry.event() instanceof Event.Undone undone) {
      named.addAll(undone.entries());
    } else if (entry.event() instanceof Event.Redone redone) {
      named.addAll(redone.entries());
    }
    long from = signed == null ? 0 : signed.seq();
    if (named.stream().anyMatch(seq -> seq <= from || seq >= entry.seq())) {
      problem(entry, "it takes back what was signed, or what is not there");
    }
  }
}
