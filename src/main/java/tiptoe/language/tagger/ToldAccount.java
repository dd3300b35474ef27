package tiptoe.language.tagger;

import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import tiptoe.language.tagger.ToldItems.Item;
import tiptoe.language.tagger.ToldItems.Kind;

/**
 * Takes every word of a part into account: what it states is told only where each is, and only
 * offered where up to three are not.
 */
final class ToldAccount {
  private static final int MOST_UNKNOWN = 3;

  /** Units of how long something lasted. */
  private static final Set<String> LASTING_UNITS = Set.of("days", "h", "s");

  /** What may change a statement if nothing accounts for it. */
  private static final Set<Kind> ALTERS =
      EnumSet.of(Kind.UNASSERTED, Kind.CONTEXT, Kind.DENY, Kind.NUMBER);

  private final ToldWords sentence;
  private final ToldLexicon told;
  private final ToldMeasures measures;
  private final LayLexicon lay;
  private final List<String> words;
  private final List<String> plain;

  ToldAccount(ToldWords sentence) {
    this.sentence = sentence;
    this.told = sentence.told();
    this.measures = new ToldMeasures(sentence);
    this.lay = sentence.lay();
    this.words = sentence.words();
    this.plain = sentence.plain();
  }

  /**
   * Accounts for the words of a part that states something, and drops or doubts what they leave
   * open.
   *
   * @param subjects what it states
   * @return those of which nobody knows what is said
   */
  Set<String> account(ToldPart part, Set<String> subjects) {
    List<String> said = part.of(plain);
    boolean measures = subjects.stream().anyMatch(told::isMeasured);
    told.beside(subjects, said).forEach(at -> part.account(part.from() + at, part.from() + at + 1));
    durations(part).forEach(part::account);
    if (measures) {
      told.of("measures", said).forEach(at -> part.account(part.from() + at, part.from() + at + 1));
    }
    boolean finds = false;
    boolean denied = false;
    for (Item item : part.items) {
      if (carriesNothing(part, item, measures) || !leavesOpen(part, item)) {
        continue;
      }
      part.altered |= ALTERS.contains(item.kind());
      finds |= item.kind() == Kind.FINDING;
      denied |= item.kind() == Kind.DENY;
    }
    boolean family = subjects.stream().anyMatch(subject -> subject.endsWith("family-history"));
    // "Told the family about the hips"
    if (family && subjects.stream().anyMatch(subject -> subject.startsWith("told-"))) {
      part.drop(one -> one.subject().endsWith("family-history"));
    }
    boolean far = family && told.says("far", plain) && !told.says("family", plain);
    boolean ours = !measures && isOurs(part, subjects);
    boolean open = !part.open.isEmpty();
    if (part.altered || ours || part.open.size() > MOST_UNKNOWN) {
      part.drop(one -> true);
    } else if (open) {
      // "A difference of five" behind a saturation is none; "bruising from the forceps" may be of
      // an attempt.
      boolean found = finds;
      part.drop(
          one ->
              open && told.isMeasured(one.subject()) && !isPlainly(part, one)
                  || found && told.isSubjectListed("not-beside-findings", one.subject()));
      part.doubt();
    }
    if (far) {
      // "Dad's sister was in a harness, but nobody is deaf"
      part.doubt(one -> !"no".equals(one.value()));
    }
    part.finds = finds && part.states();
    return denied ? Set.copyOf(subjects) : Set.of();
  }

  // It is named, and may be so much: "two normal heart sounds" is no rate.
  private boolean isPlainly(ToldPart part, ToldPart.Stated one) {
    return part.names(one.subject()) && measures.isPlausible(one.subject(), one.numbers());
  }

  // Of whoever speaks, and not of the baby; but "given me verbal consent", "we've got a girl".
  private boolean isOurs(ToldPart part, Set<String> subjects) {
    return !subjects.stream().allMatch(this::isHandedOn)
        && part.items.stream()
            .filter(item -> item.length() == 1 || item.kind() != Kind.TOLD && !isEmpty(item))
            .filter(item -> !lay.isListed("we-have", words.get(item.from())))
            .anyMatch(item -> told.says("ours", sentence.of(item)));
  }

  // "Our referral", "given me verbal consent" are of those who speak; "mum told me" is not.
  private boolean isHandedOn(String subject) {
    return sentence.isHandover(subject) && !subject.startsWith("told-");
  }

  private static boolean isEmpty(Item item) {
    return item.kind() == Kind.EMPTY;
  }

  private boolean carriesNothing(ToldPart part, Item item, boolean measures) {
    return switch (item.kind()) {
      case JOINT, EMPTY -> true;
      case ASIDE -> !measures;
      case OR -> part.denied || part.stated().stream().allMatch(one -> "no".equals(one.value()));
      default ->
          item.match() != null
              && sentence.vocabulary().isEmpty(words.subList(item.from(), item.to()));
    };
  }

  // "Under the lights for three days": how long, which no yes or no depends on.
  private List<Item> durations(ToldPart part) {
    boolean choices = part.stated().stream().allMatch(one -> one.value() != null);
    return part.all(Kind.NUMBER).stream()
        .filter(
            number ->
                choices && LASTING_UNITS.contains(String.valueOf(number.numbers().get(0).unit())))
        .filter(number -> sentence.isBehind("lasting", number.from(), part.from()))
        .toList();
  }

  // Adds the words of an item that nothing accounts for to those of its part.
  private boolean leavesOpen(ToldPart part, Item item) {
    boolean little = item.kind() != Kind.UNASSERTED && item.kind() != Kind.DENY;
    boolean open = false;
    for (int at = item.from(); at < item.to(); at++) {
      String word = plain.get(at);
      boolean accounted =
          part.accountsFor(at)
              || sentence.isListed("of-birth", at)
              || little && lay.isListed("function", word);
      open |= !accounted && part.open.add(at);
    }
    return open;
  }
}
