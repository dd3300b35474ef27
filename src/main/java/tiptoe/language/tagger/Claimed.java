package tiptoe.language.tagger;

import java.util.List;
import java.util.Set;
import tiptoe.language.SecondReading.Claim;

/**
 * A sentence and what is claimed in it.
 *
 * @param suspected words that a model takes for findings or structures, listed or not
 * @param open words that no claim accounts for
 * @param kept the claims of the sentence
 * @param read the same with those that others have put right or taken in
 */
record Claimed(
    SentenceItems sentence,
    Set<Integer> suspected,
    Set<Integer> open,
    List<Claim> kept,
    List<Claim> read) {
  Claimed {
    suspected = Set.copyOf(suspected);
    open = Set.copyOf(open);
    kept = List.copyOf(kept);
    read = List.copyOf(read);
  }
}
