package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tiptoe.language.NumberWords;
import tiptoe.language.SpokenNumber;
import tiptoe.language.TypedText;

/**
 * Reads Apgar scores that are told in a row: "apgars five, eight and nine at one, five and ten
 * minutes", "six at one minute, eight at five, nine at ten".
 */
final class ToldApgars {
  private static final List<String> STEPS = List.of("apgar-1", "apgar-5", "apgar-10");
  private static final List<String> MINUTES =
      STEPS.stream().map(step -> TypedText.spoken(step.replaceAll("\\D", "")).get(0)).toList();

  /** The scores by step, and the words that tell them. */
  record Row(Map<String, SpokenNumber> scores, int from, int to) {}

  private final ToldLexicon told;
  private final List<String> words;

  ToldApgars(ToldLexicon told, List<String> words) {
    this.told = told;
    this.words = words;
  }

  /** The first row in the sentence. */
  Optional<Row> row() {
    for (int at = 0; at < words.size(); at++) {
      Optional<Row> found = is("apgar", at) ? named(at) : pairs(at, at, 3);
      if (found.isPresent()) {
        return found;
      }
    }
    return Optional.empty();
  }

  private Optional<Row> named(int name) {
    int first = behindVerbs(name + 1);
    return together(name, first).or(() -> pairs(name, first, 2));
  }

  private int behindVerbs(int from) {
    int at = from;
    while (is("score-verbs", at) || isBetween(at)) {
      at++;
    }
    return at;
  }

  // "Five, eight and nine at one, five and ten minutes"
  private Optional<Row> together(int from, int first) {
    List<String> scores = new ArrayList<>();
    int at = list(first, scores);
    // "Nine and nine, one minute and five"
    int half = scores.size() / 2;
    boolean minute =
        words.subList(first, at).stream().anyMatch(word -> told.isListed("minute", word));
    if (minute && half > 1 && scores.subList(half, scores.size()).equals(first(half))) {
      return Optional.of(row(scores.subList(0, half), from, at));
    }
    // "Four, seven, nine, that's one, five and ten minutes"
    if (is("minutes-behind", at + 1) && words.get(at).equals(TypedText.BREAK)) {
      at++;
    }
    if (scores.size() < 2 || !is("minutes-behind", at)) {
      return Optional.empty();
    }
    List<String> minutes = new ArrayList<>();
    int to = list(at + 1, minutes);
    boolean last = scores.size() == MINUTES.size() && minutes.equals(List.of("ten"));
    boolean whole =
        last || scores.size() == minutes.size() && minutes.equals(first(minutes.size()));
    return whole ? Optional.of(row(scores, from, behindMinutes(to))) : Optional.empty();
  }

  // "Six at one minute, eight at five"; without its name only all three, the first with its minute.
  private Optional<Row> pairs(int from, int first, int least) {
    List<String> scores = new ArrayList<>();
    int at = first;
    int to = first;
    boolean minute = false;
    while (scores.size() < MINUTES.size() && isPair(at, scores.size())) {
      scores.add(words.get(at));
      int behind = behindMinuteWords(at + 1) + 1;
      to = behindMinutes(behind);
      minute |= to > behind;
      at = behindBetween(to);
    }
    return scores.size() >= least && (minute || least < MINUTES.size())
        ? Optional.of(row(scores, from, to))
        : Optional.empty();
  }

  private boolean isPair(int at, int number) {
    int minutes = behindMinuteWords(at + 1);
    return minutes > at + 1
        && minutes < words.size()
        && isScore(words.get(at))
        && words.get(minutes).equals(MINUTES.get(number));
  }

  // "At", "by the time he was"
  private int behindMinuteWords(int at) {
    return told.list("minute-behind").stream()
        .filter(term -> at + term.size() <= words.size())
        .filter(term -> words.subList(at, at + term.size()).equals(term))
        .mapToInt(term -> at + term.size())
        .max()
        .orElse(at);
  }

  private int list(int from, List<String> numbers) {
    int at = from;
    int to = from;
    while (at < words.size() && isScore(words.get(at))) {
      numbers.add(words.get(at));
      to = behindMinutes(at + 1);
      at = behindBetween(to);
    }
    return to;
  }

  private int behindBetween(int from) {
    int at = from;
    while (isBetween(at)) {
      at++;
    }
    return at;
  }

  private boolean isBetween(int at) {
    return is("between-scores", at) || at < words.size() && words.get(at).equals(TypedText.BREAK);
  }

  private boolean is(String list, int at) {
    return at < words.size() && told.isListed(list, ToldLexicon.plain(words.get(at)));
  }

  private int behindMinutes(int at) {
    int to = is("minute", at) ? at + 1 : at;
    return to > at && is("minute-old", to) ? to + 1 : to;
  }

  private static boolean isScore(String word) {
    return NumberWords.BELOW_TWENTY.subList(0, 11).contains(word);
  }

  private static List<String> first(int count) {
    return MINUTES.subList(0, Math.min(count, MINUTES.size()));
  }

  private static Row row(List<String> scores, int from, int to) {
    Map<String, SpokenNumber> row = new LinkedHashMap<>();
    for (int i = 0; i < scores.size(); i++) {
      row.put(STEPS.get(i), new SpokenNumber(null, List.of(scores.get(i)), null, null));
    }
    return new Row(row, from, to);
  }
}
