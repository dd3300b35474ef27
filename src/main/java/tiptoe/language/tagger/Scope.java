package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * Says which words of a sentence may change what a claim says: those of the chunks between breaks
 * that it stands in, and those behind it that may go on about the same. "Sutures normal, she's
 * hollering" is sure of the sutures; "sutures normal, a bit squishy" is not.
 */
final class Scope {

  private final LayLexicon lexicon;
  private final List<String> words;
  private final List<WordItem> items;
  private final Set<Integer> suspected;
  private final Protocol protocol;
  private final List<Claim> contested;
  private final List<Claim> claims;
  private final Elaboration elaboration;
  private final Set<Integer> stated = new TreeSet<>();
  private final List<Chunk> chunks = new ArrayList<>();

  /** Items between two breaks. */
  private record Chunk(int from, int to, boolean behindTurn, List<WordItem> items) {
    boolean holds(int word) {
      return from <= word && word < to;
    }
  }

  /**
   * @param suspected words that a model takes for findings or structures, listed or not
   * @param claims all that the sentence claims
   * @param contested what it says too, but does not go together with these
   */
  Scope(SentenceItems sentence, Set<Integer> suspected, List<Claim> claims, List<Claim> contested) {
    this.lexicon = sentence.lexicon();
    this.words = sentence.words();
    this.items = sentence.items();
    this.protocol = sentence.protocol();
    this.suspected = suspected;
    this.contested = contested;
    this.claims = claims;
    this.elaboration = new Elaboration(sentence);
    claims.forEach(claim -> stated.addAll(claim.evidence()));
    part();
  }

  private void part() {
    int from = 0;
    boolean behindTurn = false;
    for (int i = 0; i <= items.size(); i++) {
      boolean ends = i == items.size() || items.get(i).kind() == WordItem.Kind.COMMA || turns(i);
      if (ends) {
        if (i > from) {
          List<WordItem> chunk = items.subList(from, i);
          chunks.add(
              new Chunk(chunk.get(0).from(), chunk.get(i - from - 1).to(), behindTurn, chunk));
        }
        behindTurn = i < items.size() && turns(i) || i == from && behindTurn;
        from = i + 1;
      }
    }
  }

  private boolean turns(int i) {
    WordItem item = items.get(i);
    return item.kind() == WordItem.Kind.TURN && lexicon.isListed("parting", words.get(item.from()));
  }

  Set<Integer> of(Claim claim) {
    Set<Integer> scope = new TreeSet<>(claim.evidence());
    int first = chunks.size();
    int last = -1;
    for (int i = 0; i < chunks.size(); i++) {
      int chunk = i;
      if (claim.evidence().stream().anyMatch(chunks.get(chunk)::holds)) {
        first = Math.min(first, i);
        last = i;
      }
    }
    for (int i = first; i <= last; i++) {
      chunks.get(i).items().stream()
          .filter(item -> item.kind() != WordItem.Kind.CONCERN || isNormal(claim))
          .filter(item -> item.kind() != WordItem.Kind.PART || !isListedWith(item, claim))
          .forEach(item -> add(item, scope));
    }
    for (int i = last + 1; i < chunks.size() && goesOn(claim, chunks.get(i)); i++) {
      addDangerous(claim, chunks.get(i), scope);
    }
    // "Ventral suspension, good tone": what was named and has no finding yet may be meant.
    for (int i = first - 1; i >= 0 && names(chunks.get(i)); i--) {
      chunks.get(i).items().stream()
          .filter(item -> item.kind() == WordItem.Kind.PART && isNear(item, claim))
          .filter(item -> !item.match().steps(Sense.Kind.PART).contains(claim.step()))
          .forEach(item -> add(item, scope));
    }
    items.stream()
        .filter(item -> !isStated(item) && elaboration.isHarmless(item, claim))
        .forEach(item -> IntStream.range(item.from(), item.to()).forEach(scope::remove));
    contested.stream()
        .filter(other -> other.step().equals(claim.step()))
        .forEach(other -> scope.addAll(other.evidence()));
    putRight(claim).forEach(item -> add(item, scope));
    rivals(claim).forEach(item -> add(item, scope));
    int said = first - 1;
    while (said >= 0 && chunks.get(said).items().stream().allMatch(WordItem::isEmpty)) {
      said--;
    }
    for (int i = 0; i < chunks.size(); i++) {
      boolean ofSame =
          i < first && isOf(claim, chunks.get(i)) || i == said && refersBack(chunks.get(first));
      boolean finds = i < first && findsSame(claim, chunks.get(i));
      if (saysOnly(WordItem.Kind.NOT, chunks.get(i))
          || i > last && saysOtherSide(claim, chunks.get(i))) {
        chunks.get(i).items().forEach(item -> add(item, scope));
      } else if (finds && !ofSame) {
        chunks.get(i).items().stream()
            .filter(item -> item.kind() == WordItem.Kind.NOT)
            .forEach(item -> add(item, scope));
      } else if (ofSame) {
        chunks.get(i).items().stream()
            .filter(
                item -> item.kind() == WordItem.Kind.NOT || item.kind() == WordItem.Kind.FINDING)
            .forEach(item -> add(item, scope));
      }
    }
    // What puts something right, but nobody knows what, may put right anything.
    items.stream()
        .filter(item -> item.kind() == WordItem.Kind.CORRECTION)
        .forEach(item -> add(item, scope));
    return scope;
  }

  // "Thirty-six, the tape slipped, thirty-five": who knows which.
  private List<WordItem> rivals(Claim claim) {
    if (claim.value() != null) {
      return List.of();
    }
    return chunks.stream()
        .filter(
            chunk -> chunk.items().stream().noneMatch(item -> item.kind() == WordItem.Kind.PART))
        .flatMap(chunk -> chunk.items().stream())
        .filter(item -> item.kind() == WordItem.Kind.NUMBER && !isStated(item))
        .filter(item -> !saysAgain(item, claim))
        .toList();
  }

  // "Counted twice, still sixty-eight"
  private boolean saysAgain(WordItem number, Claim claim) {
    int to = Math.min(number.to(), number.from() + claim.numbers().get(0).words().size());
    return words.subList(number.from(), to).equals(claim.numbers().get(0).words());
  }

  // "Club foot on the left, oh bother, club foot on the right": words that nobody knows, and
  // nothing
  // else, between the same of both sides may put the side right.
  private List<WordItem> putRight(Claim claim) {
    List<WordItem> between = new ArrayList<>();
    for (Claim other : claims) {
      boolean ofOtherSide =
          other.step().equals(claim.step())
              && other.side() != claim.side()
              && Objects.equals(other.value(), claim.value())
              && !other.evidence().equals(claim.evidence());
      if (!ofOtherSide) {
        continue;
      }
      int one = Collections.max(claim.evidence());
      int two = Collections.max(other.evidence());
      chunks.stream()
          .filter(chunk -> chunk.from() > Math.min(one, two) && chunk.to() <= Math.max(one, two))
          .filter(
              chunk ->
                  chunk.items().stream()
                      .allMatch(i -> i.isEmpty() || i.kind() == WordItem.Kind.UNKNOWN))
          .flatMap(chunk -> chunk.items().stream())
          .filter(item -> item.kind() == WordItem.Kind.UNKNOWN)
          .forEach(between::add);
    }
    return between;
  }

  // "Hips and femorals fine": of the hips it says nothing, of the femorals it does.
  private boolean isListedWith(WordItem part, Claim claim) {
    if (isStated(part)) {
      return false;
    }
    int at = items.indexOf(part) + 1;
    boolean joined = false;
    while (at < items.size()
        && (items.get(at).isEmpty() || items.get(at).kind() == WordItem.Kind.AND)) {
      joined |= items.get(at).kind() == WordItem.Kind.AND;
      at++;
    }
    return joined
        && at < items.size()
        && items.get(at).kind() == WordItem.Kind.PART
        && claim.evidence().contains(items.get(at).from());
  }

  // Another structure or side begins something else; of what can be anywhere it may tell the place.
  private boolean goesOn(Claim claim, Chunk chunk) {
    boolean ofOtherSide =
        claim.side() != null
            && chunk.items().stream()
                .filter(item -> item.kind() == WordItem.Kind.SIDE && isStated(item))
                .anyMatch(item -> !item.sides().contains(claim.side()));
    return !ofOtherSide
        && chunk.items().stream()
            .filter(item -> item.kind() == WordItem.Kind.PART)
            .filter(item -> isStated(item) || !lexicon.isAnywhere(claim.step()))
            .map(item -> item.match().steps(Sense.Kind.PART))
            .allMatch(steps -> steps.isEmpty() || steps.contains(claim.step()));
  }

  // Structures and words of no weight: "ventral suspension", not "let me unpeel those fingers".
  private boolean names(Chunk chunk) {
    return chunk.items().stream()
        .allMatch(
            item ->
                item.kind() == WordItem.Kind.PART && !isStated(item)
                    || item.isEmpty()
                        && !lexicon.isListed("neutral", words.subList(item.from(), item.to())));
  }

  private boolean isNear(WordItem part, Claim claim) {
    String region = protocol.step(claim.step()).region();
    return part.match().steps(Sense.Kind.PART).stream()
        .anyMatch(step -> protocol.step(step).region().equals(region));
  }

  private boolean isStated(WordItem item) {
    return stated.contains(item.from());
  }

  // "That's acrocyanosis": said of what stands before.
  private boolean refersBack(Chunk chunk) {
    return lexicon.isListed("refers-back", words.get(chunk.from()));
  }

  private static boolean isOf(Claim claim, Chunk chunk) {
    return chunk.items().stream()
        .filter(item -> item.kind() == WordItem.Kind.PART)
        .anyMatch(item -> item.match().steps(Sense.Kind.PART).contains(claim.step()));
  }

  private static boolean findsSame(Claim claim, Chunk chunk) {
    return chunk.items().stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .anyMatch(item -> item.match().steps(Sense.Kind.VALUE).contains(claim.step()));
  }

  // "Undescended on the left, …, on the right": who knows of what.
  private static boolean saysOtherSide(Claim claim, Chunk chunk) {
    return claim.side() != null
        && saysOnly(WordItem.Kind.SIDE, chunk)
        && chunk.items().stream()
            .filter(item -> item.kind() == WordItem.Kind.SIDE)
            .noneMatch(item -> item.sides().contains(claim.side()));
  }

  private static boolean saysOnly(WordItem.Kind kind, Chunk chunk) {
    return chunk.items().stream().anyMatch(item -> item.kind() == kind)
        && chunk.items().stream().allMatch(item -> item.isEmpty() || item.kind() == kind);
  }

  private void addDangerous(Claim claim, Chunk chunk, Set<Integer> scope) {
    boolean talk =
        chunk.items().stream().anyMatch(item -> lexicon.isListed("talks", words.get(item.from())));
    boolean names = chunk.items().stream().anyMatch(item -> item.kind() == WordItem.Kind.UNKNOWN);
    for (WordItem item : chunk.items()) {
      boolean dangerous =
          switch (item.kind()) {
            case FINDING, SIDE, SAME, OTHER -> claim.value() != null;
            case DOUBT, FOREIGN, CORRECTION -> true;
            case PLAN, CONCERN -> isNormal(claim);
            // "No bogginess" denies a thing of its own; "not really" may deny anything.
            case NOT ->
                !(names
                    && (lexicon.isListed("no-thing", words.get(item.from()))
                        || !isNormal(claim) && deniesADeed(item, chunk)));
            case UNKNOWN ->
                isNormal(claim)
                    && !likens(chunk)
                    && (suspected.contains(item.from())
                        || (chunk.behindTurn() || !talk) && !deniesOnly(chunk));
            default -> false;
          };
      if (dangerous) {
        add(item, scope);
      }
    }
  }

  // "Both red reflexes present, like a sheep in the headlamps"
  private boolean likens(Chunk chunk) {
    return words.get(chunk.from()).equals("like")
        && chunk.items().stream().allMatch(i -> i.isEmpty() || i.kind() == WordItem.Kind.UNKNOWN);
  }

  // "Milia, don't squeeze them": nothing that is looked for, felt or heard.
  private boolean deniesADeed(WordItem not, Chunk chunk) {
    return lexicon.isListed("not-done", words.get(not.from()))
        && chunk.items().stream()
            .noneMatch(
                item ->
                    item.kind() == WordItem.Kind.FINDING
                        || lexicon.isListed("perceive", words.subList(item.from(), item.to()))
                        || lexicon.isListed("finds-out", words.get(item.from())));
  }

  private boolean deniesOnly(Chunk chunk) {
    return chunk.items().stream()
        .filter(item -> !item.isEmpty())
        .findFirst()
        .map(
            item ->
                item.kind() == WordItem.Kind.NOT
                    && lexicon.isListed("no-thing", words.get(item.from())))
        .orElse(false);
  }

  private boolean isNormal(Claim claim) {
    return protocol.step(claim.step()).isNormal(claim.value());
  }

  private void add(WordItem item, Set<Integer> scope) {
    for (int word = item.from(); word < item.to(); word++) {
      if (TypedText.isWord(words.get(word))) {
        scope.add(word);
      }
    }
  }
}
