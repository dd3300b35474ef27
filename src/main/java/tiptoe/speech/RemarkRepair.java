package tiptoe.speech;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.graph.Lexicon;
import tiptoe.graph.Phone;
import tiptoe.graph.Pronunciation;
import tiptoe.graph.Pronunciations;

/**
 * Puts clinical words that the model's own vocabulary lacks in the place of what it hears for them:
 * "font an el" is fontanelle. Words are compared by their phones; only words it cannot have heard
 * rightly are put in, only where they sound much alike, and only for several words: one whole word
 * is most likely what was said, unless it sounds the very same.
 */
public final class RemarkRepair {
  /** Distance a phone above which nothing is repaired; tried on invented remarks. */
  private static final double FAR = 0.27;

  /** Shorter words sound like too many others. */
  private static final int FEWEST_PHONES = 6;

  private static final int MOST_WORDS = 6;

  /**
   * Text with what was put in.
   *
   * @param repairs words heard and the word put in their place, in order
   */
  public record Repaired(String text, List<Put> repairs) {
    public Repaired {
      repairs = List.copyOf(repairs);
    }
  }

  /** Words heard, and the word that was put in their place. */
  public record Put(String heard, String word) {}

  private record Found(String word, int words, double distance) {}

  private final Lexicon lexicon;
  private final Map<String, List<Pronunciation>> clinical = new HashMap<>();
  private final Set<String> grammarWords;

  /**
   * @param words the clinical words, those of the grammars
   */
  public RemarkRepair(Set<String> words, Pronunciations pronunciations, Lexicon lexicon) {
    this.lexicon = lexicon;
    this.grammarWords = Set.copyOf(words);
    for (String word : new TreeSet<>(words)) {
      List<Pronunciation> said =
          pronunciations.of(word).stream()
              .filter(one -> one.phones().size() >= FEWEST_PHONES)
              .toList();
      if (lexicon.of(word).isEmpty() && !said.isEmpty()) {
        clinical.put(word, said);
      }
    }
  }

  /** The text with clinical words in the place of what sounds like them. */
  public Repaired repair(String heard) {
    List<String> words = heard.isBlank() ? List.of() : List.of(heard.strip().split("\\s+"));
    List<String> repaired = new ArrayList<>();
    List<Put> puts = new ArrayList<>();
    int at = 0;
    while (at < words.size()) {
      Found found = best(words, at);
      Found later = at + 1 < words.size() ? best(words, at + 1) : null;
      boolean overtaken =
          found != null
              && later != null
              && found.words() > 1
              && later.distance() < found.distance();
      if (found == null || overtaken) {
        repaired.add(words.get(at++));
      } else {
        repaired.add(found.word());
        puts.add(new Put(String.join(" ", words.subList(at, at + found.words())), found.word()));
        at += found.words();
      }
    }
    return new Repaired(String.join(" ", repaired), puts);
  }

  private Found best(List<String> words, int from) {
    Found best = null;
    List<List<Phone>> said = List.of(List.of());
    for (int to = from + 1; to <= Math.min(words.size(), from + MOST_WORDS); to++) {
      if (isSure(words.get(to - 1))) {
        break;
      }
      said = continued(said, words.get(to - 1));
      for (List<Phone> phones : said) {
        for (Map.Entry<String, List<Pronunciation>> entry : clinical.entrySet()) {
          for (Pronunciation pronunciation : entry.getValue()) {
            double distance = PhoneDistance.between(phones, pronunciation.phones());
            boolean nearer =
                best == null
                    || distance < best.distance()
                    || distance == best.distance() && entry.getKey().compareTo(best.word()) < 0;
            if (distance <= (to > from + 1 ? FAR : 0) && nearer) {
              best = new Found(entry.getKey(), to - from, distance);
            }
          }
        }
      }
    }
    return best;
  }

  // A long word is most likely what was said, not a part of another; all the more one of the
  // grammars.
  private boolean isSure(String word) {
    int most = grammarWords.contains(word) ? FEWEST_PHONES - 2 : FEWEST_PHONES;
    return lexicon.of(word).stream().anyMatch(one -> one.phones().size() > most);
  }

  private List<List<Phone>> continued(List<List<Phone>> said, String word) {
    List<List<Phone>> longer = new ArrayList<>();
    for (List<Phone> before : said) {
      for (Pronunciation next : lexicon.of(word).stream().limit(2).toList()) {
        List<Phone> phones = new ArrayList<>(before);
        phones.addAll(next.phones());
        longer.add(phones);
      }
    }
    return longer.subList(0, Math.min(longer.size(), 8));
  }
}
