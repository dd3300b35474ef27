package tiptoe.exam.journal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signature;

/**
 * Whether a record is what was written and signed. Every command passes it before it shows,
 * exports, judges or sends a record.
 *
 * @param problems what is wrong, for people; empty where nothing is
 * @param trusted fingerprint to the owner's name of the keys that are trusted here
 */
public record Integrity(State state, List<String> problems, Map<String, String> trusted) {
  public enum State {
    /** It is signed, and is what was signed. */
    WHOLE,
    /** It is as it was written, and is not signed or has an addendum that is not. */
    UNFINISHED,
    /** Something of it is not as it was written or signed. */
    ALTERED
  }

  public Integrity {
    problems = List.copyOf(problems);
    trusted = Map.copyOf(trusted);
  }

  /** That of a record in memory: the order of its entries, and its signatures. */
  public static Integrity of(ExamRecord record) {
    return of(record, List.of(), Map.of());
  }

  /** That of a record on the disk: also its chain, its end, its sound and what was kept of it. */
  static Integrity of(StoredExam stored) throws IOException {
    List<String> problems = new ArrayList<>(stored.breaks());
    problems.addAll(stored.besides());
    if (stored.torn() > 0 && !stored.record().signatures().isEmpty()) {
      problems.add(stored.tornTail());
    }
    problems.addAll(
        AudioCheck.changes(stored.folder(), stored.record(), stored.seal(), stored.ending()));
    return of(stored.record(), problems, stored.trusted());
  }

  private static Integrity of(ExamRecord record, List<String> beside, Map<String, String> trusted) {
    List<String> problems = new ArrayList<>(beside);
    problems.addAll(journalProblems(record));
    State state =
        !problems.isEmpty() ? State.ALTERED : record.signed() ? State.WHOLE : State.UNFINISHED;
    return new Integrity(state, problems, trusted);
  }

  /** What is wrong with the entries by themselves. */
  static List<String> journalProblems(ExamRecord record) {
    List<String> problems = new ArrayList<>(EntryOrder.problems(record));
    for (Signature one : record.signatures()) {
      if (!one.holds()) {
        problems.add("entry " + one.seq() + ": the signature of " + one.name() + " does not hold");
      }
    }
    return problems;
  }

  public boolean isAltered() {
    return state == State.ALTERED;
  }

  /** What must stand on every page of such a record; empty where nothing must. */
  public String banner(ExamRecord record) {
    if (!isAltered()) {
      return "";
    }
    String what = record.signatures().isEmpty() ? "written" : "signed";
    int more = problems.size() - 1;
    String others = more == 0 ? "" : "; and " + more + " more";
    return "not as it was " + what + ": " + problems.get(0) + others;
  }

  /** Whose key this is, as far as is known here; empty where it is not among the trusted ones. */
  public String owner(Signature signature) {
    return trusted.getOrDefault(String.valueOf(signature.fingerprint()), "");
  }
}
