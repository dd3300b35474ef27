package tiptoe.language.tagger;

import java.util.List;
import java.util.Set;
import tiptoe.language.NumberWords;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

/**
 * Says which words that no claim accounts for only tell more of one. What is not normal stays so
 * however it is described, and to record it is the safe way. What is normal stays so where a few
 * words behind it tell where, by what or how it was found; any other word may take from it.
 */
final class Elaboration {

  private static final Set<WordItem.Kind> ENDS =
      Set.of(WordItem.Kind.COMMA, WordItem.Kind.AND, WordItem.Kind.TURN);

  private static final Set<String> SIDES = Set.of("left", "right", "both");

  private final LayLexicon lexicon;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final Protocol protocol;
  private final boolean supposes;

  Elaboration(SentenceItems sentence) {
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.breaks = sentence.breaks();
    this.items = sentence.items();
    this.protocol = sentence.protocol();
    this.supposes =
        lexicon.says("supposes", words) || lexicon.says("hypothetical", words) || isDefinition();
  }

  // "A sacral dimple is simple when", "a submucous cleft hides", "you count the vessels": said of
  // any.
  private boolean isDefinition() {
    for (int i = 0; i + 1 < words.size(); i++) {
      if (words.get(i).equals("you") && lexicon.isListed("taught", words.get(i + 1))) {
        return true;
      }
    }
    for (int i = 1; i + 1 < items.size(); i++) {
      WordItem subject = items.get(i);
      WordItem article = items.get(i - 1);
      WordItem verb = items.get(i + 1);
      boolean begins = breaks.at(article.from() - 1);
      String said = words.get(verb.from());
      if (begins
          && subject.kind() == WordItem.Kind.FINDING
          && lexicon.isListed("article", words.get(article.from()))
          && (lexicon.isListed("of-any", said)
              || verb.kind() == WordItem.Kind.UNKNOWN && said.endsWith("s"))) {
        return true;
      }
    }
    return false;
  }

  /** Whether an item that no claim accounts for leaves this claim as it is. */
  boolean isHarmless(WordItem item, Claim claim) {
    if (supposes || claim.value() == null || !isPlaced(claim)) {
      return false;
    }
    return isNormal(claim) ? tellsHow(item, claim) : tellsMore(item, claim);
  }

  // Whether it is plain on which side it was found.
  private boolean isPlaced(Claim claim) {
    return claim.side() != null
        || !isOfSides(claim)
        || !protocol.step(claim.step()).sided() && words.stream().noneMatch(SIDES::contains);
  }

  private boolean tellsMore(WordItem item, Claim claim) {
    Step step = protocol.step(claim.step());
    return switch (item.kind()) {
      case UNKNOWN -> true;
      case NUMBER ->
          step.values().stream().noneMatch(value -> NumberWords.BELOW_TWENTY.contains(value.id()));
      case SIDE -> !isOfSides(claim) || claim.side() != null && isOfOther(item, claim);
      case FINDING -> {
        List<Sense> ofStep =
            item.match().senses().stream()
                .filter(sense -> claim.step().equals(sense.step()))
                .toList();
        // "A soft click in the right hip, no clunk": it denies something else.
        yield lexicon.denies(item.match(), words)
            ? ofStep.isEmpty()
            : ofStep.stream().allMatch(lexicon::isAbnormal);
      }
      case PART -> !inChunk(item, claim);
      default -> false;
    };
  }

  // "Quiet under the palm", "soft as biscuit dough", "seen to the uvula, felt with a fingertip"
  private boolean tellsHow(WordItem item, Claim claim) {
    boolean open = item.kind() == WordItem.Kind.UNKNOWN || item.kind() == WordItem.Kind.NUMBER;
    if (!open
        || lexicon.isListed("limits", words.get(item.from()))
        || lexicon.isAnywhere(claim.step())) {
      return false;
    }
    int at = items.indexOf(item);
    int to = at + 1;
    while (to < items.size() && isOpen(items.get(to))) {
      to++;
    }
    boolean ends =
        to == items.size()
            || ENDS.contains(items.get(to).kind())
            || isMeans(to)
            || lexicon.isListed("goes-on", words.get(items.get(to).from()));
    if (!ends || isBehind(claim, item)) {
      return false;
    }
    while (at > 0 && isOpen(items.get(at))) {
      at--;
    }
    // "Smooth as a pencil": the term ends with it.
    if (items.get(at).kind() == WordItem.Kind.FINDING) {
      return words.get(items.get(at).to() - 1).equals("as")
          && claim.evidence().contains(items.get(at).from());
    }
    String said = words.get(items.get(at).from());
    boolean definite = lexicon.isListed("definite", words.get(items.get(at).from() + 1));
    return isMeans(at) && (!said.equals("with") || definite);
  }

  // Words of a noun that nobody knows: "the full palm", "four areas".
  private boolean isOpen(WordItem item) {
    return item.kind() == WordItem.Kind.UNKNOWN
        || item.kind() == WordItem.Kind.NUMBER
        || item.isEmpty() && lexicon.isListed("determiner", words.get(item.from()));
  }

  private boolean isMeans(int at) {
    WordItem item = items.get(at);
    // "On my" may be one term.
    return item.isEmpty()
        && lexicon.isListed("means", words.get(item.from()))
        && words.subList(item.from() + 1, item.to()).stream()
            .allMatch(word -> lexicon.isListed("determiner", word));
  }

  // Whether words of the claim stand behind the item in its chunk.
  private boolean isBehind(Claim claim, WordItem item) {
    return claim.evidence().stream()
        .anyMatch(word -> word > item.from() && !breaks.between(item.from(), word));
  }

  private boolean isOfSides(Claim claim) {
    Step step = protocol.step(claim.step());
    return step.sided() || step.value(claim.value()).orElseThrow().sided();
  }

  // "Facial palsy on the left, mouth drawn to the right": the side of something else.
  private boolean isOfOther(WordItem side, Claim claim) {
    int at = items.indexOf(side);
    int from = at;
    while (from > 0 && items.get(from - 1).kind() != WordItem.Kind.COMMA) {
      from--;
    }
    return !inChunk(side, claim)
        && items.subList(from, at).stream()
            .filter(item -> item.kind() == WordItem.Kind.PART)
            .map(item -> item.match().steps(Sense.Kind.PART))
            .anyMatch(steps -> !steps.contains(claim.step()));
  }

  private boolean inChunk(WordItem item, Claim claim) {
    return claim.evidence().stream()
        .anyMatch(
            word -> !breaks.between(Math.min(word, item.from()), Math.max(word, item.from())));
  }

  private boolean isNormal(Claim claim) {
    return protocol.step(claim.step()).isNormal(claim.value());
  }
}
