package tiptoe.language.tagger;

import java.util.List;
import java.util.Optional;

/**
 * Says of whom a part of a sentence tells: "mum's pulse is ninety" and "dad was a twin" say nothing
 * of the baby.
 */
final class ToldOwner {
  /** Whose it is where it is not the baby's. */
  enum Owner {
    MOTHER,
    OTHER,
    /** Whoever speaks. */
    SPEAKER
  }

  private static final List<String> PEOPLE = List.of("far", "near", "twin");

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final List<String> words;
  private final List<String> plain;

  ToldOwner(ToldWords sentence) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.words = sentence.words();
    this.plain = sentence.plain();
  }

  /** Who is spoken of, where that is not the baby. */
  Optional<Owner> of(ToldPart part) {
    for (int at = part.from(); at < part.to(); at++) {
      if (sentence.isListed("of-the-baby", at) && !sentence.isListed("possessive", at)) {
        return Optional.empty();
      }
      int to = person(at, part.to());
      // "And nobody was worried" is of no one.
      boolean nobody = at > part.from() && sentence.isListed("deny", at);
      if (to > at
          && !nobody
          && !sentence.isBehind("before-another", at, behindJoints(part))
          && (isPossessive(to - 1) || isSubject(part, to))) {
        boolean baby =
            plain.subList(to, part.to()).stream()
                .anyMatch(word -> told.isListed("of-the-baby", word));
        List<String> behind = plain.subList(to, part.to());
        boolean herself = told.says("of-herself", behind) && !told.says("before-birth", behind);
        boolean mother = told.isListed("mums", plain.get(to - 1)) && !herself;
        return baby && !herself
            ? Optional.empty()
            : Optional.of(isSpeaker(at) ? Owner.SPEAKER : mother ? Owner.MOTHER : Owner.OTHER);
      }
    }
    return Optional.empty();
  }

  /** Whether something may be told of this one. */
  boolean mayBe(Owner owner, ToldPart.Stated one) {
    boolean declined = "declined".equals(one.value());
    return declined
        || told.isOfAnyone(one.subject())
        || switch (owner) {
          case MOTHER -> !told.isOfBaby(one.subject());
          case OTHER -> false;
          case SPEAKER -> told.isMeasured(one.subject());
        };
  }

  // "And i was sick": what joins a part makes nobody an object.
  private int behindJoints(ToldPart part) {
    int from = part.from();
    while (from < part.to() && sentence.isListed("joint", from)) {
      from++;
    }
    return from;
  }

  private boolean isSpeaker(int at) {
    return sentence.isListed("speaker", at);
  }

  private int person(int at, int end) {
    if (isSpeaker(at)) {
      return words.get(at).equals(plain.get(at)) ? at + 1 : at;
    }
    return PEOPLE.stream()
        .flatMap(list -> told.list(list).stream())
        .filter(term -> at + term.size() <= end)
        .filter(term -> plain.subList(at, at + term.size()).equals(term))
        .mapToInt(term -> at + term.size())
        .max()
        .orElse(at);
  }

  private boolean isPossessive(int at) {
    return words.get(at).endsWith("'s");
  }

  // "Mum was", "dad has", "mum vomited"
  private boolean isSubject(ToldPart part, int to) {
    if (to >= part.to()) {
      return false;
    }
    boolean speaker = isSpeaker(to - 1);
    return sentence.isListed(speaker ? "i-was" : "verbs", to)
        || !speaker
            && part.items.stream().anyMatch(item -> item.from() == to && item.isFreeValue());
  }
}
