package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.ToDoubleBiFunction;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.SecondReading.Reading;
import tiptoe.language.SecondReading.Span;
import tiptoe.language.SecondReading.Weighed;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * Takes every word of a sentence into account: only where each is part of a statement or known to
 * carry nothing is the sentence understood. What is next to a word that is not understood may be
 * half of what was said.
 */
final class Account {
  private static final List<String> FILLERS = List.of("filler", "address");

  private final SentenceItems sentence;
  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final List<String> words;
  private final List<WordItem> items;
  private final Set<Integer> suspected;
  private final ToDoubleBiFunction<Claim, Set<String>> likelihood;
  private final Likelihood.Limits limits;
  private final RivalClaims rivals;
  private final WholeClaims whole;
  private final CorrectedNumbers corrected;

  /**
   * @param suspected words that a model takes for findings or structures, listed or not
   * @param likelihood how likely a claim with such features was meant, 0 to 1
   * @param limits from which likelihood on it is recorded or offered
   */
  Account(
      SentenceItems sentence,
      Set<Integer> suspected,
      ToDoubleBiFunction<Claim, Set<String>> likelihood,
      Likelihood.Limits limits) {
    this.sentence = sentence;
    this.lexicon = sentence.lexicon();
    this.protocol = sentence.protocol();
    this.words = sentence.words();
    this.items = sentence.items();
    this.suspected = suspected;
    this.likelihood = likelihood;
    this.limits = limits;
    this.rivals = new RivalClaims(sentence);
    this.whole = new WholeClaims(sentence, suspected);
    this.corrected = new CorrectedNumbers(sentence);
  }

  Reading of(SentenceReader reader, ClaimReader claims) {
    List<Claim> read = new ArrayList<>(claims.claims(reader.read()));
    List<TermMatch> parts =
        items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART)
            .map(WordItem::match)
            .toList();
    read.addAll(Numbers.claims(corrected.numbers(), parts, protocol));
    rivals.takeIn(read);
    // "It is not milia" beside "milia": who knows.
    List<Claim> denied =
        read.stream()
            .filter(claim -> claims.deniedValues().contains(claim.step() + " " + claim.value()))
            .toList();
    read.removeAll(denied);
    List<Claim> merged = new FindingMerger(protocol).settled(read);
    List<Claim> settled =
        merged.stream().filter(claim -> !rivals.isTakenBack(claim, merged)).toList();
    Set<Integer> deniedAside = new TreeSet<>(claims.deniedAside());
    deniedAside.addAll(claims.deniedFor(settled));
    Set<Integer> unaccounted = new OpenWords(sentence, rivals).of(settled, read, deniedAside);
    denied.forEach(claim -> unaccounted.addAll(claim.evidence()));
    unaccounted.removeAll(reader.replacedWords());
    corrected.account(reader.corrections(), unaccounted);
    Doubts doubts = new Doubts(sentence);
    Set<Integer> doubted = doubts.doubted();
    unaccounted.addAll(doubts.hearsay());
    List<Claim> offered =
        settled.stream()
            .filter(
                claim ->
                    whole.said(claim, read, unaccounted).stream()
                        .anyMatch(one -> isUndoubted(one, doubts, doubted) && doubts.isLeft(one)))
            .filter(claim -> !isFoundElse(claim, settled, read, unaccounted))
            .toList();
    boolean doubtful = doubted.size() == words.size() && !doubts.offersReport(offered);
    settled.stream()
        .filter(claim -> !offered.contains(claim))
        .forEach(claim -> unaccounted.addAll(claim.evidence()));
    offered.forEach(claim -> unaccounted.addAll(twoWays(claim, read)));
    Scope scope = new Scope(sentence, suspected, settled, rivals.contested(settled, read));
    Weighing weighing =
        new Weighing(
            new Claimed(sentence, suspected, unaccounted, settled, read), likelihood, limits);
    List<Weighed> weighed = new ArrayList<>();
    for (Claim claim : settled) {
      Set<Integer> doubting = new TreeSet<>(doubts.hearsay(claim));
      if (sentence.isNormal(claim)) {
        doubting.addAll(doubts.unease());
      }
      Set<Integer> near =
          new TreeSet<>(scope(claim, whole.said(claim, read, unaccounted), scope, unaccounted));
      near.addAll(doubting);
      // "A small chin, I think, so I'd call that a small jaw"
      if (!isUndoubted(claim, doubts, doubted)) {
        near.addAll(doubted);
      }
      Weighing.Rule rule =
          doubtful
              ? Weighing.Rule.DOUBTFUL
              : offered.contains(claim) ? Weighing.Rule.OFFERED : Weighing.Rule.HELD;
      weighing
          .of(claim, doubts.withAside(near), doubting, rule, doubts.isReported(claim))
          .map(this::plain)
          .ifPresent(weighed::add);
    }
    settled.stream()
        .filter(claim -> weighed.stream().noneMatch(one -> one.claim().equals(plain(claim))))
        .forEach(claim -> unaccounted.addAll(claim.evidence()));
    return new Reading(
        weighed,
        spans(unaccounted),
        doubtful && weighed.isEmpty(),
        plain(unaccounted),
        plain(fillers(doubts.hearsay())));
  }

  // "Hips tight in their sockets": stable, or stiff; but "tight, limited" is told.
  private Set<Integer> twoWays(Claim claim, List<Claim> read) {
    if (!lexicon.isStepListed("two-ways-of", claim.step())
        || read.stream()
            .filter(other -> other.isOfSame(claim))
            .flatMap(sentence::findings)
            .anyMatch(item -> !isVague(item))) {
      return Set.of();
    }
    Set<Integer> vague = new TreeSet<>();
    sentence.findings(claim).forEach(item -> vague.addAll(item.places()));
    return vague;
  }

  private boolean isVague(WordItem finding) {
    return sentence.said(finding).stream().allMatch(word -> lexicon.isListed("two-ways", word));
  }

  private static boolean isUndoubted(Claim claim, Doubts doubts, Set<Integer> doubted) {
    return claim.evidence().stream().noneMatch(word -> doubts.isDoubted(word, claim, doubted));
  }

  // "Trembling, quits when I hold them, so jittery, not a seizure": what is denied is not all.
  private boolean isFoundElse(
      Claim normal, List<Claim> settled, List<Claim> read, Set<Integer> unaccounted) {
    return !normal.denied().isEmpty()
        && settled.stream()
            .filter(other -> sentence.isFound(other) && other.isOfSame(normal))
            .anyMatch(other -> whole.said(other, read, unaccounted).isEmpty());
  }

  private static Set<Integer> scope(
      Claim claim, List<Claim> said, Scope scope, Set<Integer> unaccounted) {
    return said.stream()
        .map(scope::of)
        .filter(words -> words.stream().noneMatch(unaccounted::contains))
        .findFirst()
        .orElseGet(() -> scope.of(claim));
  }

  private Set<Integer> fillers(Set<Integer> not) {
    Set<Integer> fillers = new TreeSet<>();
    for (WordItem item : items) {
      if (item.kind() == WordItem.Kind.FILLER
          && FILLERS.stream().anyMatch(list -> lexicon.isListed(list, sentence.said(item)))) {
        fillers.addAll(item.places());
      }
    }
    fillers.removeAll(not);
    return fillers;
  }

  private int plain(int index) {
    return TypedText.plain(words.subList(0, index)).size();
  }

  private Set<Integer> plain(Set<Integer> indexes) {
    Set<Integer> plain = new TreeSet<>();
    for (int index : indexes) {
      if (TypedText.isWord(words.get(index))) {
        plain.add(plain(index));
      }
    }
    return plain;
  }

  private Weighed plain(Weighed one) {
    return new Weighed(plain(one.claim()), plain(one.scope()), one.likelihood(), one.verdict());
  }

  private Claim plain(Claim claim) {
    return claim.with(plain(claim.evidence()));
  }

  private List<Span> spans(Set<Integer> unaccounted) {
    List<Span> spans = new ArrayList<>();
    for (WordItem item : items) {
      if (item.kind() == WordItem.Kind.COMMA || words.get(item.from()).equals(TypedText.ASKS)) {
        continue;
      }
      boolean open = unaccounted.contains(item.from());
      String label = item.kind().id();
      spans.add(
          new Span(
              open && item.kind() != WordItem.Kind.UNKNOWN ? label + ", open" : label,
              plain(item.from()),
              plain(item.to())));
    }
    return spans;
  }
}
