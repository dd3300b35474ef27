package tiptoe.graph;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;
import tiptoe.grammar.WordAutomaton;

/**
 * Finds words of the grammars that a pronunciation could be taken for. Sounds are compared phone by
 * phone: one that is left out, added or replaced counts 1, one that is replaced by its like (voiced
 * for voiceless, a neighbouring vowel) a half. Which are alike is common practice, no source.
 */
public final class SoundsAlike {
  /** Up to this distance a word is too close. */
  public static final double CLOSE = 1;

  private static final List<List<Phone>> ALIKE =
      List.of(
          List.of(Phone.P, Phone.B),
          List.of(Phone.T, Phone.D),
          List.of(Phone.K, Phone.G),
          List.of(Phone.F, Phone.V),
          List.of(Phone.TH, Phone.DH),
          List.of(Phone.S, Phone.Z),
          List.of(Phone.SH, Phone.ZH),
          List.of(Phone.CH, Phone.JH),
          List.of(Phone.M, Phone.N),
          List.of(Phone.N, Phone.NG),
          List.of(Phone.IH, Phone.IY),
          List.of(Phone.UH, Phone.UW),
          List.of(Phone.EH, Phone.AE),
          List.of(Phone.AA, Phone.AO),
          List.of(Phone.AA, Phone.AH),
          List.of(Phone.AH, Phone.IH),
          List.of(Phone.AH, Phone.EH),
          List.of(Phone.AH, Phone.UH),
          List.of(Phone.AH, Phone.ER));

  private static final Map<Phone, Set<Phone>> LIKE = like();

  /**
   * A word that sounds much the same.
   *
   * @param distance 0 for the same sound
   * @param samePlace whether both words can stand at the same place of a phrase, so that nothing
   *     else tells them apart
   */
  public record Alike(String word, Pronunciation sound, double distance, boolean samePlace) {}

  private SoundsAlike() {}

  /**
   * The words too close to a sound, the nearest first.
   *
   * @param phrases what can be said
   * @param said how each word is said so far
   * @param word whose sound it is to be; not compared with itself
   */
  public static List<Alike> find(
      WordAutomaton phrases,
      Function<String, List<Pronunciation>> said,
      String word,
      Pronunciation sound) {
    SortedSet<String> words = new TreeSet<>();
    Set<String> beside = new TreeSet<>();
    for (WordAutomaton.State state : phrases.states()) {
      List<String> here = state.arcs().stream().map(WordAutomaton.Arc::word).toList();
      words.addAll(here);
      if (here.contains(word)) {
        beside.addAll(here);
      }
    }
    words.remove(word);
    List<Alike> found = new ArrayList<>();
    for (String other : words) {
      said.apply(other).stream()
          .map(one -> new Alike(other, one, distance(sound, one), beside.contains(other)))
          .min(Comparator.comparingDouble(Alike::distance))
          .filter(one -> one.distance() <= CLOSE)
          .ifPresent(found::add);
    }
    found.sort(Comparator.comparingDouble(Alike::distance).thenComparing(Alike::word));
    return found;
  }

  /** How far two sounds are apart. */
  static double distance(Pronunciation one, Pronunciation other) {
    double[] above = new double[other.phones().size() + 1];
    for (int j = 0; j < above.length; j++) {
      above[j] = j;
    }
    for (int i = 1; i <= one.phones().size(); i++) {
      double[] row = new double[above.length];
      row[0] = i;
      for (int j = 1; j < row.length; j++) {
        double replaced = above[j - 1] + cost(one.phones().get(i - 1), other.phones().get(j - 1));
        row[j] = Math.min(replaced, 1 + Math.min(above[j], row[j - 1]));
      }
      above = row;
    }
    return above[above.length - 1];
  }

  private static double cost(Phone one, Phone other) {
    if (one == other) {
      return 0;
    }
    return LIKE.get(one).contains(other) ? 0.5 : 1;
  }

  private static Map<Phone, Set<Phone>> like() {
    Map<Phone, Set<Phone>> like = new EnumMap<>(Phone.class);
    for (Phone phone : Phone.values()) {
      like.put(phone, EnumSet.noneOf(Phone.class));
    }
    for (List<Phone> pair : ALIKE) {
      like.get(pair.get(0)).add(pair.get(1));
      like.get(pair.get(1)).add(pair.get(0));
    }
    return like;
  }
}
