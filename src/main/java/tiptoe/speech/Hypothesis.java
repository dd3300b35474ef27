package tiptoe.speech;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;
import tiptoe.graph.DecodingGraph;

/**
 * What was said between two pauses, as it was heard: in phrases, and where it was heard a second
 * time how well these fit the sound, what else may have been said, and how it is heard in free
 * wordings.
 *
 * @param start when its first word begins, seconds since the recogniser was opened
 * @param end when its last word ends, seconds since the recogniser was opened
 * @param words its words in order, at least one
 * @param support how much better its likeliest words explain the sound than a free sequence of
 *     phones does, as a difference of natural logarithms, of the whole utterance or of its longest
 *     stretch of phrases where other speech is beside them; most often below 0 for talk that
 *     happens to sound a little like a phrase; empty where it was heard once
 * @param rivals what the sound may also have been, likeliest first
 * @param freely how it is heard in free wordings, whether these hold phrases or not; empty where it
 *     was not heard so
 * @param leftOver seconds of sound about it, as loud as its words, that none of them accounts for;
 *     0 where a cry was heard
 */
public record Hypothesis(
    double start,
    double end,
    List<Word> words,
    OptionalDouble support,
    List<Rival> rivals,
    Optional<Hypothesis> freely,
    double leftOver) {
  /** The word that stands for speech which is no phrase. */
  public static final String FILLER = DecodingGraph.FILLER;

  /** Stands among the words where the speaker paused. */
  public static final String PAUSE = ",";

  /** So long is a pause that parts what is said, in seconds; shorter ones are between any words. */
  private static final double PARTS = 0.1;

  /**
   * Other words for the same sound.
   *
   * @param text the words of phrases, without filler; of free wordings, as {@link #parted} gives
   *     them
   * @param margin how much less likely they are than those heard, natural logarithm, 0 or more
   */
  public record Rival(String text, double margin) {}

  public Hypothesis {
    words = List.copyOf(words);
    rivals = List.copyOf(rivals);
    if (words.isEmpty()) {
      throw new IllegalArgumentException("expected at least one word, found none");
    }
  }

  /** An utterance that was heard once. */
  public Hypothesis(double start, double end, List<Word> words) {
    this(start, end, words, OptionalDouble.empty(), List.of(), Optional.empty(), 0);
  }

  static Hypothesis of(List<Word> words) {
    return new Hypothesis(words.get(0).start(), words.get(words.size() - 1).end(), words);
  }

  /** The same, with what a second hearing of its sound brought. */
  public Hypothesis weighed(double newSupport, List<Rival> newRivals) {
    return new Hypothesis(
        start, end, words, OptionalDouble.of(newSupport), newRivals, freely, leftOver);
  }

  /** The same, with how it is heard in free wordings. */
  public Hypothesis freely(Hypothesis inFreeWordings) {
    return new Hypothesis(
        start, end, words, support, rivals, Optional.of(inFreeWordings), leftOver);
  }

  /** The same, with so many seconds of sound about it that no word accounts for. */
  public Hypothesis leftOver(double seconds) {
    return new Hypothesis(start, end, words, support, rivals, freely, seconds);
  }

  /**
   * This utterance and the one that carries it on, as one: either half may have been something
   * else.
   */
  Hypothesis then(Hypothesis next) {
    List<Word> all = new ArrayList<>(words);
    all.addAll(next.words);
    Hypothesis both = new Hypothesis(start, next.end, all).leftOver(leftOver + next.leftOver);
    if (support.isEmpty() || next.support.isEmpty()) {
      return both;
    }
    List<Rival> either = new ArrayList<>();
    rivals.forEach(one -> either.add(new Rival(one.text() + " " + next.text(), one.margin())));
    next.rivals.forEach(one -> either.add(new Rival(text() + " " + one.text(), one.margin())));
    either.sort(Comparator.comparingDouble(Rival::margin));
    return both.weighed(support.getAsDouble() + next.support.getAsDouble(), either);
  }

  /** The same, marked as cut off: what was said right behind it is not known. */
  Hypothesis cutOff() {
    List<Word> all = new ArrayList<>(words);
    all.add(new Word(FILLER, end, end, 1));
    return new Hypothesis(start, end, all, support, rivals, freely, leftOver);
  }

  /** The same, so many seconds later. */
  Hypothesis later(double seconds) {
    return seconds == 0
        ? this
        : new Hypothesis(
            start + seconds,
            end + seconds,
            words.stream().map(word -> word.later(seconds)).toList(),
            support,
            rivals,
            freely.map(other -> other.later(seconds)),
            leftOver);
  }

  /** The words of phrases, without filler. */
  public List<Word> phraseWords() {
    return words.stream().filter(word -> !word.isFiller()).toList();
  }

  /** The longest stretch of phrases that no filler interrupts; empty where there is no phrase. */
  List<Word> longestPhrases() {
    List<Word> longest = List.of();
    List<Word> open = new ArrayList<>();
    for (Word word : words) {
      if (word.isFiller()) {
        open = new ArrayList<>();
      } else {
        open.add(word);
        longest = seconds(open) > seconds(longest) ? List.copyOf(open) : longest;
      }
    }
    return longest;
  }

  /** Seconds of words and filler, without pauses. */
  public double spokenSeconds() {
    return seconds(words);
  }

  /** The share of that time which no word fits, 0 to 1. */
  public double fillerShare() {
    return spokenSeconds() == 0 ? 1 : seconds(filler()) / spokenSeconds();
  }

  /** Whether speech that is no phrase takes up more time than phrases do. */
  public boolean isMostlyFiller() {
    return seconds(filler()) > seconds(phraseWords());
  }

  private List<Word> filler() {
    return words.stream().filter(Word::isFiller).toList();
  }

  private static double seconds(List<Word> words) {
    return words.stream().mapToDouble(word -> word.end() - word.start()).sum();
  }

  /** The words of phrases as one text; empty when nothing but filler was heard. */
  public String text() {
    return phraseWords().stream().map(Word::text).collect(Collectors.joining(" "));
  }

  /** The words of phrases with {@link #PAUSE} where the speaker paused between them. */
  public List<String> parted() {
    List<String> parted = new ArrayList<>();
    Word before = null;
    for (Word word : phraseWords()) {
      if (before != null && word.start() - before.end() >= PARTS) {
        parted.add(PAUSE);
      }
      parted.add(word.text());
      before = word;
    }
    return parted;
  }

  public boolean hasFiller() {
    return words.stream().anyMatch(Word::isFiller);
  }

  public boolean hasPhrase() {
    return words.stream().anyMatch(word -> !word.isFiller());
  }
}
