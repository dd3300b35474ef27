package tiptoe.language.tagger;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tiptoe.language.TypedText;

/** Says what of a sentence is told of another baby, of another time or to another end. */
final class ToldElsewhere {
  static final Set<String> CONSENT = Set.of("consent", "consent-by", "consent-form");

  private static final Set<String> WEIGHTS = Set.of("weight", "birth-weight");

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
    return !places("stranger").isEmpty();
  }

  /**
   * Lets nothing stand that is told of other babies, "that's babies for you", and of a child of
   * this family, "no strep with the last baby"; what is listed behind that one may be of it too.
   *
   * @return what is no longer told
   */
  Set<String> dropOthers(List<ToldPart> parts) {
    Set<String> dropped = new TreeSet<>();
    boolean behind = false;
    for (int from = 0; from < parts.size(); ) {
      int to = from + 1;
      while (to < parts.size() && parts.get(to).joined) {
        to++;
      }
      List<ToldPart> together = parts.subList(from, to);
      boolean child = together.stream().anyMatch(part -> isIn(part, "other-child"));
      boolean babies = child || together.stream().anyMatch(part -> isIn(part, "babies-in-general"));
      boolean speaks = together.stream().anyMatch(part -> part.has(ToldItems.Kind.TOLD));
      for (ToldPart part : together) {
        if (babies) {
          part.stated().stream()
              .filter(one -> !mayBeOfChild(part, one))
              .forEach(one -> dropped.add(one.subject()));
          part.items.stream()
              .flatMap(ToldItems.Item::senses)
              .filter(sense -> !sense.bound())
              .forEach(sense -> dropped.add(sense.subject()));
          if (part.has(ToldItems.Kind.NUMBER)) {
            dropped.addAll(WEIGHTS);
          }
          part.drop(one -> !mayBeOfChild(part, one));
        } else if (behind) {
          part.doubt();
        }
      }
      if (child && !speaks && told.begins("that-was", together.get(0).of(plain))) {
        // "Four kilos, that was her last baby"
        parts
            .subList(0, from)
            .forEach(part -> part.stated().forEach(one -> dropped.add(one.subject())));
        parts.subList(0, from).forEach(part -> part.drop(one -> true));
      }
      behind |= child;
      from = to;
    }
    return dropped;
  }

  // "Your brother was born with a heart defect": the history of the family, whoever is told so.
  private boolean mayBeOfChild(ToldPart part, ToldPart.Stated one) {
    return told.says("your-sib", part.of(plain))
        && one.subject().endsWith("family-history")
        && "yes".equals(one.value());
  }

  private boolean isIn(ToldPart part, String list) {
    return places(list).stream().anyMatch(at -> part.from() <= at && at < part.to());
  }

  // Where a term of a list stands that is no part of what is told.
  private Set<Integer> places(String list) {
    List<ToldLexicon.Match> matches = told.matches(plain);
    Set<Integer> places = new TreeSet<>();
    for (List<String> said : List.of(sentence.words(), plain)) {
      told.list(list).forEach(term -> places.addAll(places(said, term, matches)));
    }
    return places;
  }

  private static List<Integer> places(
      List<String> said, List<String> term, List<ToldLexicon.Match> matches) {
    return IntStream.rangeClosed(0, said.size() - term.size())
        .filter(from -> said.get(from).equals(term.get(0)))
        .filter(from -> said.subList(from, from + term.size()).equals(term))
        .filter(
            from ->
                matches.stream()
                    .noneMatch(
                        match ->
                            match.from() <= from
                                && from + term.size() <= match.to()
                                && match.to() - match.from() > term.size()))
        .boxed()
        .toList();
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
