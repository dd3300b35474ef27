package tiptoe.language.tagger;

import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tiptoe.language.tagger.ToldItems.Kind;

/**
 * Says which parts ask something, which only name it, and what stands behind them for an answer.
 */
final class ToldQuestions {
  private static final Set<Kind> LABEL =
      EnumSet.of(Kind.TOLD, Kind.EMPTY, Kind.CONTEXT, Kind.JOINT, Kind.ASIDE);

  private static final Set<String> SIDES = Set.of("left", "right", "left's", "right's");

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final List<String> plain;

  ToldQuestions(ToldWords sentence) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.plain = sentence.plain();
  }

  /** "As for the hips in the family" says nothing of them yet. */
  boolean announces(ToldPart part) {
    return told.begins("announces", said(part));
  }

  // The words of a part behind what joins or opens it.
  private List<String> said(ToldPart part) {
    int from = part.from();
    while (from < part.to()
        && (sentence.isListed("joint", from) || sentence.isListed("opens", from))) {
      from++;
    }
    return plain.subList(from, part.to());
  }

  boolean isAsked(ToldPart part) {
    List<String> said = said(part);
    // "Had his vitamin k" is no question, "had he" is.
    boolean inverted =
        said.size() > 2
            && told.isListed("auxiliary", said.get(0))
            && told.isListed("subject", said.get(1))
            && !(told.isListed("had-or-asks", said.get(0))
                && told.isListed("determiner", said.get(1)));
    return inverted || told.begins("asks", said) && !told.begins("what-we-have", said);
  }

  /** "Your first baby, isn't it, yes" */
  static boolean isTag(ToldPart part) {
    return part.items.size() <= 2 && !part.has(Kind.TOLD);
  }

  /** What a part says to a question before it; none where it is no answer. */
  Optional<Boolean> answer(ToldPart part) {
    List<String> said = part.of(plain);
    if (part.corrects && told.isListed("bare-no", said)) {
      return Optional.of(false);
    }
    if (said.size() > 2) {
      return Optional.empty();
    }
    return told.isListed("deny", said)
        ? Optional.of(false)
        : told.isListed("affirm", said) ? Optional.of(true) : Optional.empty();
  }

  /** "Vomiting" in "vomiting, none at all": named, and nothing said of it yet. */
  boolean isLabel(ToldPart part) {
    return part.has(Kind.TOLD)
        && part.consistsOf(LABEL)
        && part.of(plain).stream()
            .noneMatch(word -> told.isListed("verbs", word) || told.isListed("pronoun", word));
  }

  // "Nothing there to score" denies nothing that was named.
  private boolean isRemark(ToldPart part) {
    return part.items.stream()
        .anyMatch(item -> told.isListed("nothing", sentence.of(item)) && item.to() < part.to());
  }

  /** "No strep on the swab" and "that's negative" say the same twice, and deny nothing anew. */
  boolean saysAgain(ToldPart part, ToldPart next) {
    Set<String> said =
        part.items.stream()
            .filter(ToldItems.Item::isFreeValue)
            .flatMap(ToldItems.Item::senses)
            .map(ToldLexicon.Sense::subject)
            .collect(Collectors.toSet());
    return next.all(Kind.TOLD).stream()
        .flatMap(ToldItems.Item::senses)
        .anyMatch(sense -> said.contains(sense.subject()) && !"no".equals(sense.value()));
  }

  /** "None at all"; "the right isn't" is of a side, and so of what was examined. */
  boolean isNone(ToldPart part) {
    return !part.corrects
        && part.of(plain).stream().noneMatch(SIDES::contains)
        && part.items.stream().anyMatch(sentence::isDenial)
        && !isRemark(part)
        && part.items.stream()
            .allMatch(
                item -> sentence.isDenial(item) || ToldPart.CARRY_NOTHING.contains(item.kind()));
  }
}
