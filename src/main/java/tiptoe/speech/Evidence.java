package tiptoe.speech;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import tiptoe.speech.VoskResults.Alternative;

/**
 * What a second hearing of the sound of an utterance brought: of the whole utterance, or of its
 * longest stretch of phrases where other speech is beside them.
 *
 * @param support how much better the likeliest phrases explain the sound than a free sequence of
 *     phones does, as a difference of natural logarithms; most often below 0 for talk that happens
 *     to sound a little like a phrase
 * @param rivals what the sound may also have been, likeliest first
 */
public record Evidence(double support, List<Rival> rivals) {
  /**
   * Other words for the same sound.
   *
   * @param text the words of phrases, without filler
   * @param margin how much less likely they are than those heard, natural logarithm, 0 or more
   */
  public record Rival(String text, double margin) {}

  public Evidence {
    rivals = List.copyOf(rivals);
  }

  /**
   * What the ways to hear a stretch over the decoding graph say.
   *
   * @param heard likeliest first, at least one
   * @param free the cost of the likeliest sequence of phones for the same stretch
   */
  static Evidence of(List<Alternative> heard, double free) {
    Alternative best = heard.get(0);
    List<Rival> rivals = new ArrayList<>();
    for (Alternative other : heard.subList(1, heard.size())) {
      if (rivals.stream().noneMatch(rival -> rival.text().equals(other.text()))
          && !other.text().equals(best.text())) {
        rivals.add(new Rival(other.text(), other.cost() - best.cost()));
      }
    }
    return new Evidence(free - best.cost(), rivals);
  }

  /**
   * The evidence for two utterances as one: either half may have been something else.
   *
   * @param text words of the first
   * @param nextText words of the second
   */
  Evidence before(Evidence next, String text, String nextText) {
    List<Rival> either = new ArrayList<>();
    rivals.forEach(one -> either.add(new Rival(one.text() + " " + nextText, one.margin())));
    next.rivals.forEach(one -> either.add(new Rival(text + " " + one.text(), one.margin())));
    either.sort(Comparator.comparingDouble(Rival::margin));
    return new Evidence(support + next.support, either);
  }
}
