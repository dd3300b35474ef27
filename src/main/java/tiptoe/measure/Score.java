package tiptoe.measure;

import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.finding.Finding;

/**
 * What came out of one recording in one condition.
 *
 * @param noise the noise that was mixed in; null in quiet
 * @param seconds length of the sound
 * @param busySeconds processor time that hearing it took, on all threads
 * @param heard its utterances
 * @param words what became of each line's words; empty where they are not known
 * @param meaning what became of each line's meaning; empty where the words are not known
 * @param expected the answers that should stand
 * @param answers those that stand
 * @param notCovered words of the script that the grammars do not hold
 */
public record Score(
    Path file,
    Condition condition,
    Path noise,
    double seconds,
    double busySeconds,
    List<TimedUtterance> heard,
    List<Alignment.Outcome> words,
    List<Alignment.Outcome> meaning,
    Set<Finding> expected,
    Set<Finding> answers,
    List<String> notCovered) {
  public Score {
    heard = List.copyOf(heard);
    words = List.copyOf(words);
    meaning = List.copyOf(meaning);
  }

  /** The folder it is from, by its name alone. */
  String set() {
    Path folder = file.toAbsolutePath().normalize().getParent();
    return folder.getFileName() == null ? "/" : folder.getFileName().toString();
  }

  /** Answers that stand and should. */
  Set<Finding> right() {
    return kept(answers, expected, true);
  }

  /** Answers that stand and should not. */
  public Set<Finding> wrong() {
    return kept(answers, expected, false);
  }

  /** Answers that should stand and do not. */
  Set<Finding> missing() {
    return kept(expected, answers, false);
  }

  private static Set<Finding> kept(Set<Finding> from, Set<Finding> by, boolean in) {
    Set<Finding> kept = new TreeSet<>(java.util.Comparator.comparing(Finding::toString));
    from.stream().filter(key -> by.contains(key) == in).forEach(kept::add);
    return kept;
  }

  /** Everything that was heard, without filler. */
  String text() {
    return String.join(
        " ", heard.stream().map(TimedUtterance::text).filter(text -> !text.isEmpty()).toList());
  }
}
