package tiptoe.language.tagger;

import java.util.EnumSet;
import java.util.LinkedHashSet;
import java.util.Set;
import java.util.stream.Collectors;
import tiptoe.language.tagger.ToldItems.Kind;

/** What was spoken of before, of which what stands alone behind it may be told. */
final class ToldTopic {
  static final Set<Kind> NAMES_NOTHING = EnumSet.of(Kind.EMPTY, Kind.JOINT);

  private final ToldWords sentence;
  private Set<String> subjects = Set.of();
  private boolean ofNumber;

  ToldTopic(ToldWords sentence) {
    this.sentence = sentence;
  }

  Set<String> subjects() {
    return subjects;
  }

  /** Whether a number alone may still be of it. */
  boolean isOfNumber() {
    return ofNumber;
  }

  void forget() {
    subjects = Set.of();
  }

  void take(Set<String> spokenOf) {
    subjects = spokenOf;
    ofNumber = true;
  }

  /** What is named and has nothing said of it yet: "blood glucose, first one two point one". */
  void remember(ToldPart part) {
    Set<String> named =
        part.named()
            .filter(sense -> !sense.weak())
            .map(ToldLexicon.Sense::subject)
            .collect(Collectors.toCollection(LinkedHashSet::new));
    if (!named.isEmpty()) {
      take(named);
    } else if (part.has(Kind.FINDING)) {
      // "Heart is regular, one thirty two a minute"
      ToldLexicon told = sentence.told();
      subjects =
          told.matches(part.of(sentence.plain())).stream()
              .flatMap(match -> match.of(ToldLexicon.Kind.ABOUT).stream())
              .map(ToldLexicon.Sense::subject)
              .filter(told::isMeasured)
              .collect(Collectors.toCollection(LinkedHashSet::new));
      ofNumber = false;
    } else if (!part.consistsOf(NAMES_NOTHING)) {
      ofNumber = !part.has(Kind.NUMBER);
    }
  }
}
