package tiptoe.speech;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import tiptoe.graph.DecodingGraph;

/**
 * What was said between two pauses.
 *
 * @param start when its first word begins, seconds since the recogniser was opened
 * @param end when its last word ends, seconds since the recogniser was opened
 * @param words its words in order, at least one
 * @param evidence what a second hearing brought; empty where there was none
 * @param otherwise how it was heard in free wordings; empty where it was not heard so
 */
public record Hypothesis(
    double start,
    double end,
    List<Word> words,
    Optional<Evidence> evidence,
    Optional<FreeWording> otherwise) {
  /** The word that stands for speech which is no phrase. */
  public static final String FILLER = DecodingGraph.FILLER;

  public Hypothesis {
    words = List.copyOf(words);
    if (words.isEmpty()) {
      throw new IllegalArgumentException("expected at least one word, found none");
    }
  }

  /** An utterance that was not heard in free wordings. */
  public Hypothesis(double start, double end, List<Word> words, Optional<Evidence> evidence) {
    this(start, end, words, evidence, Optional.empty());
  }

  /** An utterance that was heard once. */
  public Hypothesis(double start, double end, List<Word> words) {
    this(start, end, words, Optional.empty());
  }

  static Hypothesis of(List<Word> words) {
    return new Hypothesis(words.get(0).start(), words.get(words.size() - 1).end(), words);
  }

  /** This utterance and the one that carries it on, as one. */
  Hypothesis then(Hypothesis next) {
    List<Word> all = new ArrayList<>(words);
    all.addAll(next.words);
    Optional<Evidence> both =
        evidence.flatMap(
            first -> next.evidence.map(second -> first.before(second, text(), next.text())));
    return new Hypothesis(start, next.end, all, both);
  }

  /** The same, marked as cut off: what was said right behind it is not known. */
  Hypothesis cutOff() {
    List<Word> all = new ArrayList<>(words);
    all.add(new Word(FILLER, end, end, 1));
    return new Hypothesis(start, end, all, evidence, otherwise);
  }

  /** The same, so many seconds later. */
  Hypothesis later(double seconds) {
    return seconds == 0
        ? this
        : new Hypothesis(
            start + seconds,
            end + seconds,
            words.stream().map(word -> word.later(seconds)).toList(),
            evidence,
            otherwise.map(other -> other.later(seconds)));
  }

  /** The same, with what a second hearing brought. */
  public Hypothesis with(Evidence brought) {
    return new Hypothesis(start, end, words, Optional.of(brought), otherwise);
  }

  /** The same, with how it was heard in free wordings. */
  public Hypothesis with(FreeWording other) {
    return new Hypothesis(start, end, words, evidence, Optional.of(other));
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

  /** Whether speech that is no phrase takes up more time than phrases do. */
  public boolean isMostlyFiller() {
    List<Word> filler = words.stream().filter(Word::isFiller).toList();
    return seconds(filler) > seconds(phraseWords());
  }

  private static double seconds(List<Word> words) {
    return words.stream().mapToDouble(word -> word.end() - word.start()).sum();
  }

  /** The words of phrases as one text; empty when nothing but filler was heard. */
  public String text() {
    return phraseWords().stream().map(Word::text).collect(Collectors.joining(" "));
  }

  public boolean hasFiller() {
    return words.stream().anyMatch(Word::isFiller);
  }

  public boolean hasPhrase() {
    return words.stream().anyMatch(word -> !word.isFiller());
  }
}
