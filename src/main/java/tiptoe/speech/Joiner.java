package tiptoe.speech;

import java.util.ArrayList;
import java.util.List;

/**
 * Puts together again what a short pause tore apart. An utterance whose words may well go on, such
 * as "weight three thousand", is held back for a moment: what follows is joined to it where the
 * grammar has both as one phrase, so that no number is recorded by its first half.
 */
public final class Joiner {
  /** So long after its last word an utterance waits for more, in seconds: words show late. */
  static final double WAIT_SECONDS = 0.8;

  /** The same where the sound tells that nothing more has begun. */
  static final double QUIET_SECONDS = 0.6;

  /** What comes later than this is said for itself, in seconds. */
  static final double LONGEST_PAUSE = 1.2;

  /** What can be said, as far as joining must know. */
  public interface Phrases {
    /** Whether these words are likely to be only the beginning of what is being said. */
    boolean mayGoOn(List<String> words);

    /** Whether a word carries on the phrase that these words end in. */
    boolean goesOnWith(List<String> words, String next);
  }

  private final Phrases phrases;
  private Hypothesis held;

  public Joiner(Phrases phrases) {
    this.phrases = phrases;
  }

  /** Takes an utterance, and gives those that are complete now, in order. */
  public List<Hypothesis> hear(Hypothesis next) {
    List<Hypothesis> complete = new ArrayList<>(2);
    Hypothesis utterance = next;
    if (held != null) {
      if (belongs(next)) {
        utterance = held.then(next);
      } else {
        complete.add(held);
      }
      held = null;
    }
    if (!utterance.hasFiller() && phrases.mayGoOn(texts(utterance))) {
      held = utterance;
    } else {
      complete.add(utterance);
    }
    return complete;
  }

  /**
   * Gives the utterance that was held back once it has waited long enough.
   *
   * @param seconds up to where sound was heard, since the recogniser was opened
   * @param speaking whether words are being said, so that it must wait for their end
   * @param quiet whether nothing is heard at all, so that no word has begun which does not show yet
   */
  public List<Hypothesis> wait(double seconds, boolean speaking, boolean quiet) {
    double enough = quiet ? QUIET_SECONDS : WAIT_SECONDS;
    boolean over = held != null && !speaking && seconds >= held.end() + enough;
    return over ? end() : List.of();
  }

  /** Gives the utterance that is held back, since no sound follows. */
  public List<Hypothesis> end() {
    List<Hypothesis> last = held == null ? List.of() : List.of(held);
    held = null;
    return last;
  }

  private boolean belongs(Hypothesis next) {
    Word first = next.words().get(0);
    return next.start() - held.end() <= LONGEST_PAUSE
        && !first.isFiller()
        && phrases.goesOnWith(texts(held), first.text());
  }

  private static List<String> texts(Hypothesis utterance) {
    return utterance.phraseWords().stream().map(Word::text).toList();
  }
}
