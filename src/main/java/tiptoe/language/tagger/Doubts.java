package tiptoe.language.tagger;

import java.util.Collections;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.TypedText;

/** Says what of a sentence is only doubted, planned or said of others. */
final class Doubts {
  private static final int NONE = Integer.MAX_VALUE;
  private static final int SHORTEST_ASIDE = 3;

  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<WordItem> items;
  private final List<List<WordItem>> chunks;
  private final Hearsay hearsay;
  private int aside = NONE;

  Doubts(SentenceItems sentence) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.items = sentence.items();
    this.chunks = WordItem.chunks(items);
    this.hearsay = new Hearsay(sentence);
  }

  /**
   * The words that a doubt, a plan or another person takes with it: the chunk it stands in, or the
   * whole sentence where that chunk says nothing else. A plan, a question or a remark about others
   * behind what was found takes only what it stands in, and what follows: {@link #isLeft}.
   */
  Set<Integer> doubted() {
    Set<Integer> doubted = new TreeSet<>();
    for (List<WordItem> chunk : chunks) {
      if (hearsay.isReported(chunk) || isOfThen(chunk)) {
        doubted.addAll(WordItem.places(chunk));
      }
      for (WordItem item : chunk) {
        if (hearsay.isOf(item)) {
          continue;
        }
        if (item.kind() == WordItem.Kind.FOREIGN) {
          boolean asked = words.get(item.from()).equals(TypedText.ASKS);
          if (!isAside(chunk) || asked && !asksElse(chunk)) {
            return all();
          }
          return from(chunk, doubted);
        }
        if (item.kind() != WordItem.Kind.DOUBT && item.kind() != WordItem.Kind.PLAN) {
          continue;
        }
        // "I think that's just acrocyanosis": what it may change is only offered.
        if (lexicon.isListed("hedge", sentence.said(item))) {
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
        boolean plans = item.kind() == WordItem.Kind.PLAN || asks(chunk, item);
        if (supposed || !says && !(plans && isAside(chunk))) {
          return all();
        }
        if (!says) {
          return from(chunk, doubted);
        }
        chunk.forEach(other -> doubted.addAll(other.places()));
      }
    }
    return doubted;
  }

  // "Ortolani positive, did you feel that through the mattress": no tag as in "a bruise, is it".
  private boolean asks(List<WordItem> chunk, WordItem doubt) {
    return doubt == chunk.get(0)
        && lexicon.isListed("asking", words.get(doubt.from()))
        && WordItem.places(chunk).size() > SHORTEST_ASIDE;
  }

  // "Pink all over, do you want to hold her?"; but "pink, no distress?" asks all of it.
  private boolean asksElse(List<WordItem> chunk) {
    List<Integer> places = List.copyOf(WordItem.places(chunk));
    boolean behind = lexicon.isListed("before-a-question", words.get(places.get(0)));
    String opener = words.get(places.get(behind && places.size() > 1 ? 1 : 0));
    return chunk.stream().noneMatch(item -> item.kind() == WordItem.Kind.FINDING)
        && Stream.of("asking", "asks-where", "inverts")
            .anyMatch(list -> lexicon.isListed(list, opener));
  }

  // A stretch of its own behind what was found, which says nothing of how that was or will be.
  private boolean isAside(List<WordItem> chunk) {
    return chunk != chunks.get(0)
        && !lexicon.isListed("still-of-it", words.get(chunk.get(0).from()))
        && WordItem.places(chunk).size() >= SHORTEST_ASIDE
        && chunk.stream()
            .noneMatch(
                item ->
                    item.kind() == WordItem.Kind.PART
                        || item.kind() == WordItem.Kind.CORRECTION
                        || lexicon.isListed("of-before", words.get(item.from()))
                        || lexicon.isListed("supposes", words.get(item.from())));
  }

  private Set<Integer> from(List<WordItem> chunk, Set<Integer> before) {
    Set<Integer> doubted = new TreeSet<>(before);
    aside = chunk.get(0).from();
    items.stream()
        .filter(item -> item.from() >= aside)
        .forEach(item -> doubted.addAll(item.places()));
    return doubted;
  }

  /** Whether a claim stands before what is said aside. {@link #doubted} finds the aside. */
  boolean isLeft(Claim claim) {
    return aside == NONE || Collections.max(claim.evidence()) < aside;
  }

  /** The words that may change a claim, and those of an aside: beside one it is only offered. */
  Set<Integer> withAside(Set<Integer> scope) {
    Set<Integer> all = new TreeSet<>(scope);
    items.stream()
        .filter(item -> item.from() >= aside)
        .filter(
            item ->
                item.kind() == WordItem.Kind.DOUBT
                    || item.kind() == WordItem.Kind.PLAN
                    || item.kind() == WordItem.Kind.FOREIGN)
        .filter(item -> TypedText.isWord(words.get(item.from())))
        .forEach(item -> all.addAll(item.places()));
    return all;
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
    if (isReported(word)) {
      return !mayReport(word, claim);
    }
    return doubted.contains(word)
        && items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART && foundBeside(claim, doubted))
            .noneMatch(item -> item.from() <= word && word < item.to());
  }

  // "He was floppy at birth"
  private boolean isOfThen(List<WordItem> chunk) {
    List<String> said = chunk.isEmpty() ? List.of() : WordItem.said(chunk, words);
    return lexicon.says("of-before", said) && lexicon.says("back-then", said);
  }

  /** Whether others report it. */
  boolean isReported(Claim claim) {
    return claim.evidence().stream().anyMatch(this::isReported);
  }

  private boolean isReported(int word) {
    return chunks.stream()
        .anyMatch(chunk -> hearsay.isReported(chunk) && WordItem.places(chunk).contains(word));
  }

  // "Dad says he's passed urine": of this baby, now.
  private boolean mayReport(int word, Claim claim) {
    return hearsay.mayBeOffered(claim)
        && words.subList(sentence.breaks().from(word), sentence.breaks().to(word)).stream()
            .noneMatch(
                said ->
                    lexicon.isListed("of-before", said)
                        || lexicon.isListed("had-before", said)
                        || lexicon.isListed("supposes", said));
  }

  /** What others report, and what is said behind that, is only offered: the words that say so. */
  Set<Integer> hearsay(Claim claim) {
    boolean reaches = Collections.max(claim.evidence()) > hearsay.from();
    return reaches ? hearsay.said() : Set.of();
  }

  Set<Integer> hearsay() {
    return hearsay.said();
  }

  /** Whether a claim that is left is of what others report. */
  boolean offersReport(List<Claim> left) {
    return left.stream()
        .anyMatch(
            claim ->
                claim.evidence().stream()
                    .anyMatch(word -> isReported(word) && mayReport(word, claim)));
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

  /** The words that make a doubt of what is normal. */
  Set<Integer> unease() {
    Set<Integer> unease = new TreeSet<>();
    items.stream()
        .filter(item -> item.kind() == WordItem.Kind.CONCERN)
        .forEach(item -> unease.addAll(item.places()));
    return unease;
  }
}
