package tiptoe.language.tagger;

import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import tiptoe.language.TypedText;

/** Says what of a sentence is told of another baby, of another time or to another end. */
final class ToldElsewhere {
  static final Set<String> CONSENT = Set.of("consent", "consent-by", "consent-form");

  /** The value of how it lay, and the word for it. */
  static final String BREECH = "breech";

  private static final int NEAR_BREECH = 4;

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final List<String> plain;

  ToldElsewhere(ToldWords sentence) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.plain = sentence.plain();
  }

  /**
   * "That baby weighed four kilos", "theatre want someone for a section"; but "the other twin was
   * breech" is told of this one.
   */
  boolean isOfStranger() {
    return isOfStranger(sentence.words()) || isOfStranger(plain);
  }

  private boolean isOfStranger(List<String> said) {
    List<ToldLexicon.Match> matches = told.matches(plain);
    return told.list("stranger").stream().anyMatch(term -> isOfStranger(said, term, matches));
  }

  private static boolean isOfStranger(
      List<String> said, List<String> term, List<ToldLexicon.Match> matches) {
    return IntStream.rangeClosed(0, said.size() - term.size())
        .filter(from -> said.get(from).equals(term.get(0)))
        .filter(from -> said.subList(from, from + term.size()).equals(term))
        .anyMatch(
            from ->
                matches.stream()
                    .noneMatch(
                        match ->
                            match.from() <= from
                                && from + term.size() <= match.to()
                                && match.to() - match.from() > term.size()));
  }

  /** "Consent for the photo was given" */
  boolean consentsToAnother() {
    return IntStream.range(0, plain.size() - 2)
        .filter(at -> sentence.isListed("consent", at) && sentence.isListed("consents-to", at + 1))
        .anyMatch(at -> !sentence.isListed("examining", behindDeterminers(at + 2)));
  }

  private int behindDeterminers(int from) {
    int to = from;
    while (to + 1 < plain.size() && sentence.isListed("determiner", to)) {
      to++;
    }
    return to;
  }

  /**
   * "Was breech but turned", "breech at thirty weeks": not how it lay at the birth; "head first"
   * may still be of that.
   */
  boolean wasBreechBefore() {
    List<String> said = TypedText.plain(plain);
    int breech = said.indexOf(BREECH);
    return breech >= 0
        && (told.says("turned", said)
            || told.says("pregnancy-time", said)
                && (said.subList(breech + 1, said.size()).indexOf("then") == 0
                    || IntStream.range(breech + 1, Math.min(breech + NEAR_BREECH, said.size() - 1))
                        .anyMatch(
                            at ->
                                told.isListed("then", said.get(at))
                                    && told.isListed("weeks-of-then", said.get(at + 1)))));
  }
}
