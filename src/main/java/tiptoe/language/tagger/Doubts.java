package tiptoe.language.tagger;

import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.language.SecondReading.Claim;

/** Says what of a sentence is only doubted, planned or said of others. */
final class Doubts {
  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<WordItem> items;

  Doubts(SentenceItems sentence) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.items = sentence.items();
  }

  /**
   * The words that a doubt, a plan or another person takes with it: the chunk it stands in, or the
   * whole sentence where that chunk says nothing else.
   */
  Set<Integer> doubted() {
    Set<Integer> doubted = new TreeSet<>();
    for (List<WordItem> chunk : WordItem.chunks(items)) {
      for (WordItem item : chunk) {
        if (item.kind() == WordItem.Kind.FOREIGN) {
          return all();
        }
        if (item.kind() != WordItem.Kind.DOUBT && item.kind() != WordItem.Kind.PLAN) {
          continue;
        }
        boolean says =
            chunk.stream()
                .anyMatch(
                    other ->
                        other.kind() == WordItem.Kind.PART
                            || other.kind() == WordItem.Kind.FINDING
                            || other.kind() == WordItem.Kind.UNKNOWN);
        // "Call us if she's grunting, or sucking in": all that may come.
        boolean supposed =
            lexicon.isListed("in-case", words.get(item.from()))
                && chunk.subList(0, chunk.indexOf(item)).stream()
                    .anyMatch(other -> lexicon.isListed("to-tell", words.get(other.to() - 1)));
        if (!says || supposed) {
          return all();
        }
        chunk.forEach(other -> doubted.addAll(other.places()));
      }
    }
    return doubted;
  }

  private Set<Integer> all() {
    Set<Integer> all = new TreeSet<>();
    items.forEach(item -> all.addAll(item.places()));
    return all;
  }

  /**
   * Whether a word of a claim is doubted; not so in "not convinced by the left femoral, but the
   * right is strong": it is the femoral that is named, and something else that is found.
   */
  boolean isDoubted(int word, Claim claim, Set<Integer> doubted) {
    return doubted.contains(word)
        && items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART && foundBeside(claim, doubted))
            .noneMatch(item -> item.from() <= word && word < item.to());
  }

  private boolean foundBeside(Claim claim, Set<Integer> doubted) {
    return items.stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING && !doubted.contains(item.from()))
        .filter(
            item ->
                doubted.isEmpty()
                    || item.from() > Collections.min(doubted)
                    || !item.match().isBound())
        .anyMatch(item -> claim.evidence().contains(item.from()));
  }

  /** Whether something makes a doubt of what is normal. */
  boolean uneasy() {
    return items.stream().anyMatch(item -> item.kind() == WordItem.Kind.CONCERN);
  }
}
