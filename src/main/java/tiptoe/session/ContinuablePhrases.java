package tiptoe.session;

import java.util.List;
import java.util.SortedSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.NumberWords;
import tiptoe.speech.Joiner;

/**
 * Tells by the grammar whether words may be torn off: a number that more number can follow, such as
 * "three thousand", or a lone "no" or side, which means the opposite without what it belongs to.
 */
public final class ContinuablePhrases implements Joiner.Phrases {
  private static final List<String> LINKS = List.of("hundred", "thousand", "point", "and");
  private static final List<String> LONE = List.of("no", "left", "right", "both");

  private final PhraseNetwork network;

  public ContinuablePhrases(PhraseNetwork network) {
    this.network = network;
  }

  @Override
  public boolean mayGoOn(List<String> words) {
    if (words.isEmpty()) {
      return false;
    }
    if (words.size() == 1 && LONE.contains(words.get(0))) {
      return true;
    }
    return isNumber(words.get(words.size() - 1))
        && following(words).stream().anyMatch(ContinuablePhrases::isNumber);
  }

  @Override
  public boolean goesOnWith(List<String> words, String next) {
    return following(words).contains(next);
  }

  private SortedSet<String> following(List<String> words) {
    return network.following(words).words();
  }

  private static boolean isNumber(String word) {
    return LINKS.contains(word) || !NumberWords.readings(List.of(word)).isEmpty();
  }
}
