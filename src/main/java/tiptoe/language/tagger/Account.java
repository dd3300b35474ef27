package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.SecondReading.Reading;
import tiptoe.language.SecondReading.Span;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;

/**
 * Takes every word of a sentence into account: only where each is part of a statement or known to
 * carry nothing is the sentence understood. What is next to a word that is not understood may be
 * half of what was said.
 */
final class Account {
  private static final int MOST_UNKNOWN = 2;
  private static final Set<String> NOT_DONE = Set.of("not-assessable", "not-examined");
  private static final List<String> FILLERS = List.of("filler", "address");

  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final List<String> words;
  private final Breaks breaks;
  private final List<WordItem> items;
  private final Set<Integer> suspected;
  private final Set<Integer> deniedAside = new TreeSet<>();
  private final List<Numbers.At> correctedNumbers = new ArrayList<>();

  /**
   * @param suspected words that a model takes for findings or structures, listed or not
   */
  Account(
      LayLexicon lexicon,
      Protocol protocol,
      List<String> words,
      List<WordItem> items,
      Set<Integer> suspected) {
    this.lexicon = lexicon;
    this.protocol = protocol;
    this.words = words;
    this.breaks = new Breaks(words);
    this.items = items;
    this.suspected = suspected;
  }

  Reading of(SentenceReader reader, ClaimReader claims) {
    List<Claim> read = new ArrayList<>(claims.claims(reader.read()));
    List<TermMatch> parts =
        items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART)
            .map(WordItem::match)
            .toList();
    read.addAll(Numbers.claims(numbers(), parts, protocol));
    takeIn(read);
    // "It is not milia" beside "milia": who knows.
    List<Claim> denied =
        read.stream()
            .filter(claim -> claims.deniedValues().contains(claim.step() + " " + claim.value()))
            .toList();
    read.removeAll(denied);
    List<Claim> merged = new FindingMerger(protocol).settled(read);
    List<Claim> settled = merged.stream().filter(claim -> !isTakenBack(claim, merged)).toList();
    deniedAside.addAll(claims.deniedAside());
    deniedAside.addAll(claims.deniedFor(settled));
    Set<Integer> unaccounted = unaccounted(settled, read);
    denied.forEach(claim -> unaccounted.addAll(claim.evidence()));
    unaccounted.removeAll(reader.replacedWords());
    corrections(reader.corrections() + correctedNumbers.size(), unaccounted);
    Set<Integer> doubted = doubted();
    boolean doubtful = doubted.size() == words.size();
    List<Claim> offered =
        settled.stream()
            .filter(claim -> !said(claim, read, unaccounted).isEmpty())
            .filter(
                claim ->
                    claim.evidence().stream().noneMatch(word -> isDoubted(word, claim, doubted)))
            .filter(claim -> !uneasy() || !isNormal(claim))
            .filter(claim -> !isFoundElse(claim, settled, read, unaccounted))
            .toList();
    settled.stream()
        .filter(claim -> !offered.contains(claim))
        .forEach(claim -> unaccounted.addAll(claim.evidence()));
    Scope scope =
        new Scope(lexicon, words, items, suspected, settled, contested(settled, read), protocol);
    return new Reading(
        offered.stream().map(this::plain).toList(),
        offered.stream()
            .map(claim -> scope(claim, said(claim, read, unaccounted), scope, unaccounted))
            .map(this::plain)
            .toList(),
        spans(unaccounted),
        doubtful,
        plain(unaccounted),
        plain(fillers()));
  }

  // "Hips open right out to the mattress, full on each side": what is said in full in one place
  // does not need what is said of it in others. The ways in which a claim is said.
  private List<Claim> said(Claim claim, List<Claim> read, Set<Integer> unaccounted) {
    return Stream.concat(
            Stream.of(claim),
            read.stream()
                .filter(one -> one.step().equals(claim.step()) && one.side() == claim.side())
                .filter(one -> Objects.equals(one.value(), claim.value()))
                .filter(one -> one.numbers().equals(claim.numbers()))
                .flatMap(one -> Stream.of(one, core(one))))
        .distinct()
        .filter(one -> isWhole(one) && !isDenied(one, unaccounted))
        .toList();
  }

  // "Trembling, quits when I hold them, so jittery, not a seizure": what is denied is not all.
  private boolean isFoundElse(
      Claim normal, List<Claim> settled, List<Claim> read, Set<Integer> unaccounted) {
    return !normal.denied().isEmpty()
        && settled.stream()
            .filter(other -> isFound(other) && other.step().equals(normal.step()))
            .filter(other -> other.side() == normal.side())
            .anyMatch(other -> said(other, read, unaccounted).isEmpty());
  }

  // What only explains another claim, or describes what that names, is part of it.
  private void takeIn(List<Claim> read) {
    // "A bit folded, but it's well formed": the one or the other.
    List<Claim> verdicts = read.stream().filter(c -> isNormal(c) && isVerdict(c)).toList();
    List<Claim> weighed =
        read.stream()
            .filter(this::isFound)
            .filter(
                claim ->
                    verdicts.stream()
                        .anyMatch(
                            verdict ->
                                verdict.step().equals(claim.step())
                                    && verdict.side() == claim.side()))
            .toList();
    read.removeAll(weighed);
    read.removeIf(
        claim ->
            verdicts.contains(claim)
                && weighed.stream()
                    .anyMatch(
                        other ->
                            other.step().equals(claim.step()) && other.side() == claim.side()));
    read.removeIf(this::isHindrance);
    for (Claim claim : List.copyOf(read)) {
      Optional<Claim> whole =
          read.stream()
              .filter(other -> isReason(claim, other) || isNamedBehind(claim, other))
              .findFirst();
      if (whole.isPresent()) {
        Claim other = whole.get();
        Set<Integer> evidence = new TreeSet<>(other.evidence());
        evidence.addAll(claim.evidence());
        read.set(
            read.indexOf(other),
            new Claim(
                other.step(),
                other.side(),
                other.value(),
                other.denied(),
                other.numbers(),
                evidence));
        read.remove(claim);
      }
    }
  }

  // "Cord's dried up, so I can't count the vessels": a reason, and no finding.
  private boolean isReason(Claim claim, Claim other) {
    if (claim.value() == null || !isNormal(claim)) {
      return false;
    }
    // "Sclerae white, so no jaundice": of the eyes it says no more.
    boolean ofColour =
        other.step().equals("jaundice")
            && findings(claim).anyMatch(item -> lexicon.says("not-yellow", said(item)));
    boolean why =
        NOT_DONE.contains(String.valueOf(other.value()))
            && lexicon.near(claim.step(), other.step())
            && findings(claim).anyMatch(item -> lexicon.isListed("reason", said(item)));
    return why || ofColour && claim.step().equals("eyes");
  }

  // "Cord's dried up, so I can't tell you how many vessels": of these it says nothing either.
  private boolean isHindrance(Claim claim) {
    return claim.value() != null
        && isNormal(claim)
        && findings(claim).anyMatch(item -> lexicon.isListed("reason", said(item)))
        && lexicon.says("unable", words)
        && items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART)
            .map(item -> item.match().steps(Sense.Kind.PART))
            .anyMatch(
                steps ->
                    !steps.contains(claim.step())
                        && steps.stream().anyMatch(step -> lexicon.near(step, claim.step())));
  }

  // "A boggy swelling, so that's a caput": what was described is told by its name.
  private boolean isNamedBehind(Claim claim, Claim other) {
    return isFound(claim)
        && isFound(other)
        && other.step().equals(claim.step())
        && other.side() == claim.side()
        && !other.value().equals(claim.value())
        && findings(claim).anyMatch(this::isThing)
        && findings(other)
            .filter(name -> name.from() > Collections.max(claim.evidence()) && !isThing(name))
            .anyMatch(
                name ->
                    breaks.from(name.from()) > Collections.max(claim.evidence())
                        && (lexicon.isListed("refers-back", words.get(breaks.from(name.from())))
                            || isAlone(name)));
  }

  // "A boggy swelling, subgaleal"
  private boolean isAlone(WordItem name) {
    return breaks.from(name.from()) == name.from() && breaks.to(name.from()) == name.to();
  }

  private boolean isFound(Claim claim) {
    return claim.value() != null && claim.denied().isEmpty() && !isNormal(claim);
  }

  private boolean isThing(WordItem finding) {
    return said(finding).stream()
        .anyMatch(word -> lexicon.isListed("thing", word) || lexicon.isListed("neutral", word));
  }

  private Stream<WordItem> findings(Claim claim) {
    return items.stream()
        .filter(item -> item.kind() == WordItem.Kind.FINDING)
        .filter(item -> claim.evidence().contains(item.from()));
  }

  private List<String> said(WordItem item) {
    return words.subList(item.from(), item.to());
  }

  // What of it stands between the breaks around its finding, where that says all of it.
  private Claim core(Claim claim) {
    Optional<WordItem> finding =
        items.stream()
            .filter(item -> item.kind() == WordItem.Kind.FINDING)
            .filter(item -> claim.evidence().contains(item.from()))
            .reduce((first, second) -> second);
    if (finding.isEmpty()) {
      return claim;
    }
    Set<Integer> chunk = chunk(finding.get());
    List<WordItem> left =
        items.stream()
            .filter(item -> claim.evidence().contains(item.from()))
            .filter(item -> !chunk.contains(item.from()))
            .toList();
    List<WordItem> here =
        items.stream()
            .filter(item -> claim.evidence().contains(item.from()))
            .filter(item -> chunk.contains(item.from()))
            .toList();
    boolean free =
        finding.get().match().senses().stream()
            .anyMatch(sense -> claim.step().equals(sense.step()) && !sense.bound());
    boolean named =
        free
            || here.stream()
                .anyMatch(
                    item ->
                        item.kind() == WordItem.Kind.PART
                            && item.match().steps(Sense.Kind.PART).contains(claim.step()));
    boolean placed =
        claim.side() == null
            || here.stream()
                .filter(item -> item.kind() == WordItem.Kind.SIDE)
                .anyMatch(item -> item.sides().contains(claim.side()))
            || left.stream().noneMatch(item -> item.kind() == WordItem.Kind.SIDE);
    boolean denied = left.stream().anyMatch(item -> item.kind() == WordItem.Kind.NOT);
    if (!named || !placed || denied) {
      return claim;
    }
    Set<Integer> evidence = new TreeSet<>(claim.evidence());
    evidence.retainAll(chunk);
    return new Claim(
        claim.step(), claim.side(), claim.value(), claim.denied(), claim.numbers(), evidence);
  }

  private static Set<Integer> scope(
      Claim claim, List<Claim> said, Scope scope, Set<Integer> unaccounted) {
    return said.stream()
        .map(scope::of)
        .filter(words -> words.stream().noneMatch(unaccounted::contains))
        .findFirst()
        .orElseGet(() -> scope.of(claim));
  }

  // "Not convinced by the left femoral, but the right is strong": it is the femoral that is named,
  // and something else that is found.
  private boolean isDoubted(int word, Claim claim, Set<Integer> doubted) {
    return doubted.contains(word)
        && items.stream()
            .filter(item -> item.kind() == WordItem.Kind.PART && foundBeside(claim, doubted))
            .noneMatch(item -> item.from() <= word && word < item.to());
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

  private boolean uneasy() {
    return items.stream().anyMatch(item -> item.kind() == WordItem.Kind.CONCERN);
  }

  private boolean isNormal(Claim claim) {
    return protocol.step(claim.step()).isNormal(claim.value());
  }

  // The numbers said, without those that were put right: "thirty-four, no, thirty-five".
  private List<Numbers.At> numbers() {
    // "Heart of gold, this one": no number.
    List<Numbers.At> all =
        new ArrayList<>(
            Numbers.in(words, lexicon.matches(words)).stream()
                .filter(
                    number ->
                        items.stream()
                            .filter(item -> item.kind() == WordItem.Kind.NUMBER)
                            .anyMatch(item -> item.from() == number.from()))
                .toList());
    for (WordItem item : items) {
      if (item.kind() == WordItem.Kind.CORRECTION) {
        Numbers.At before = null;
        Numbers.At behind = null;
        for (Numbers.At number : all) {
          before = number.to() <= item.from() ? number : before;
          behind = behind == null && number.from() >= item.to() ? number : behind;
        }
        if (before != null && behind != null && isAlone(before, behind)) {
          all.remove(before);
          correctedNumbers.add(before);
        }
      }
    }
    return all;
  }

  private boolean isAlone(Numbers.At before, Numbers.At behind) {
    return items.stream()
        .filter(item -> item.from() >= before.to() && item.to() <= behind.from())
        .noneMatch(item -> item.kind() == WordItem.Kind.PART && !recounts(before, behind));
  }

  // "Three pustules in the groin, no, four"
  private boolean recounts(Numbers.At before, Numbers.At behind) {
    return isCount(words.subList(before.from(), before.to()))
        && isCount(words.subList(behind.from(), behind.to()))
        && breaks.at(behind.from() - 1)
        && breaks.at(behind.to());
  }

  private void corrections(int understood, Set<Integer> unaccounted) {
    long said = items.stream().filter(item -> item.kind() == WordItem.Kind.CORRECTION).count();
    if (said == understood) {
      items.stream()
          .filter(item -> item.kind() == WordItem.Kind.CORRECTION)
          .forEach(item -> unaccounted.removeAll(range(item)));
    }
    for (Numbers.At number : correctedNumbers) {
      for (int word = number.from(); word < number.to(); word++) {
        unaccounted.remove(word);
      }
    }
  }

  // The words that a doubt, a plan or another person takes with it: the chunk it stands in, or the
  // whole sentence where that chunk says nothing else.
  private Set<Integer> doubted() {
    Set<Integer> doubted = new TreeSet<>();
    for (List<WordItem> chunk : WordItem.chunks(items)) {
      for (WordItem item : chunk) {
        if (item.kind() == WordItem.Kind.FOREIGN) {
          return all();
        }
        if (item.kind() != WordItem.Kind.DOUBT && item.kind() != WordItem.Kind.PLAN) {
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
            words.get(item.from()).equals("if")
                && chunk.subList(0, chunk.indexOf(item)).stream()
                    .anyMatch(other -> Set.of("us", "me").contains(words.get(other.to() - 1)));
        if (!says || supposed) {
          return all();
        }
        chunk.forEach(other -> doubted.addAll(range(other)));
      }
    }
    return doubted;
  }

  private Set<Integer> all() {
    Set<Integer> all = new TreeSet<>();
    items.forEach(item -> all.addAll(range(item)));
    return all;
  }

  private Set<Integer> unaccounted(List<Claim> settled, List<Claim> read) {
    Set<Integer> stated = new TreeSet<>();
    settled.forEach(claim -> stated.addAll(claim.evidence()));
    read.stream()
        .filter(claim -> settled.stream().anyMatch(kept -> covers(kept, claim)))
        .forEach(claim -> stated.addAll(claim.evidence()));
    Set<Integer> open = new TreeSet<>();
    for (WordItem item : items) {
      boolean carries =
          switch (item.kind()) {
            case NUMBER ->
                range(item).stream().noneMatch(stated::contains)
                    && !counts(item, stated)
                    && settled.stream().noneMatch(claim -> isSize(item, claim));
            case PART, FINDING, SIDE, NOT, SAME, OTHER ->
                range(item).stream().noneMatch(stated::contains) && !isBeside(item, settled);
            case UNKNOWN, DOUBT, PLAN, CONCERN, FOREIGN, CORRECTION -> true;
            case DESCRIPTION -> settled.stream().noneMatch(claim -> isDescribed(claim, item));
            default -> false;
          };
      if (carries) {
        open.addAll(range(item));
      }
    }
    asides().forEach(open::removeAll);
    open.removeAll(deniedOthers(stated));
    open.removeAll(deniedAside);
    open.removeAll(saidAgain(stated));
    // What contradicts something else in the sentence counts for neither.
    contested(settled, read).forEach(claim -> open.addAll(claim.evidence()));
    settled.stream()
        .filter(claim -> isNormal(claim) && isExcepted(claim, settled) || isOfBefore())
        .forEach(claim -> open.addAll(claim.evidence()));
    settled.stream()
        .filter(claim -> isOnlyTried(claim, settled))
        .forEach(claim -> open.add(Collections.max(claim.evidence())));
    return open;
  }

  // "Couldn't get a red reflex": there is none, or it could not be looked for. Where the other side
  // has one it could.
  private boolean isOnlyTried(Claim claim, List<Claim> settled) {
    return "absent".equals(claim.value())
        && findings(claim).noneMatch(item -> lexicon.isListed("outright", words.get(item.to() - 1)))
        && claim.evidence().stream()
            .map(word -> words.subList(word, Math.min(words.size(), breaks.to(word))))
            .anyMatch(said -> lexicon.longest("tried", said) > 0)
        && settled.stream()
            .noneMatch(
                other ->
                    other.step().equals(claim.step())
                        && other.side() != claim.side()
                        && !Objects.equals(other.value(), claim.value()));
  }

  // "Boggy" of a caput is no news, of a scalp that is clear it is.
  private boolean isDescribed(Claim claim, WordItem description) {
    if (claim.value() == null || isNormal(claim)) {
      return false;
    }
    return claim.evidence().stream().anyMatch(chunk(description)::contains);
  }

  // "Was red, fine now"
  private boolean isOfBefore() {
    return words.contains("now") && (words.contains("was") || words.contains("were"));
  }

  // "No dysmorphism apart from low-set ears": then it is not quite so.
  private boolean isExcepted(Claim claim, List<Claim> settled) {
    int last = claim.evidence().stream().max(Integer::compare).orElse(0);
    return lexicon.list("exception").stream()
        .mapToInt(words -> Collections.indexOfSubList(this.words, words))
        .filter(at -> at > last && !breaks.between(last, at))
        .anyMatch(
            at ->
                settled.stream()
                    .filter(other -> other.step().equals(claim.step()))
                    .allMatch(other -> isNormal(other)));
  }

  // "Nothing on the skin apart from milia": then something is. "White discharge, quite normal":
  // that is said of the discharge. "Skin's grand, a few milia": only praise.
  private boolean isTakenBack(Claim claim, List<Claim> merged) {
    if (claim.value() == null || !isNormal(claim)) {
      return false;
    }
    List<List<String>> said =
        findings(claim).map(item -> words.subList(item.from(), item.to())).toList();
    boolean praise =
        said.stream()
            .allMatch(
                item ->
                    lexicon.isListed("good", item)
                        || lexicon.isListed("good", item.get(item.size() - 1)));
    boolean only = said.stream().noneMatch(item -> item.contains("normal"));
    return merged.stream()
        .filter(other -> isFound(other) && other.step().equals(claim.step()))
        .filter(other -> other.side() == claim.side())
        .anyMatch(
            other ->
                lexicon.says("exception", words) || praise && (only || isBehind(claim, other)));
  }

  private static boolean isBehind(Claim claim, Claim other) {
    return Collections.max(other.evidence()) < Collections.max(claim.evidence());
  }

  // "No jaundice, none at all."
  private Set<Integer> saidAgain(Set<Integer> stated) {
    Set<Integer> again = new TreeSet<>();
    boolean denied = false;
    for (List<WordItem> chunk : WordItem.chunks(items)) {
      boolean onlyNone =
          chunk.stream()
              .allMatch(
                  item ->
                      item.isEmpty()
                          || item.kind() == WordItem.Kind.NOT
                              && Set.of("none", "nothing", "nil").contains(words.get(item.from())));
      if (onlyNone && denied) {
        chunk.forEach(item -> again.addAll(range(item)));
      } else {
        denied =
            chunk.stream()
                .filter(item -> stated.contains(item.from()))
                .anyMatch(
                    item ->
                        item.kind() == WordItem.Kind.NOT || lexicon.denies(item.match(), words));
      }
    }
    return again;
  }

  private List<Claim> contested(List<Claim> settled, List<Claim> read) {
    List<Claim> dropped =
        read.stream()
            .filter(claim -> settled.stream().noneMatch(kept -> covers(kept, claim)))
            .toList();
    // "Femorals equal, actually the left is weaker": nor is the right what was said of both.
    List<Claim> all = new ArrayList<>(dropped);
    settled.stream()
        .filter(claim -> dropped.stream().anyMatch(other -> isOtherSide(claim, other)))
        .forEach(all::add);
    return all;
  }

  private static boolean isOtherSide(Claim one, Claim other) {
    return one.step().equals(other.step())
        && one.side() != other.side()
        && Objects.equals(one.value(), other.value())
        && one.evidence().equals(other.evidence());
  }

  // "No bogginess", "no murmurs, rubs or gallops": what is denied beside, and is nothing that the
  // protocol asks for.
  private Set<Integer> deniedOthers(Set<Integer> stated) {
    Set<Integer> others = new TreeSet<>();
    for (int i = 0; i < items.size(); i++) {
      WordItem item = items.get(i);
      boolean no =
          item.kind() == WordItem.Kind.NOT
              && lexicon.isListed("no-thing", words.get(item.from()))
              && item.to() == item.from() + 1;
      if (!no) {
        continue;
      }
      Set<Integer> denied = new TreeSet<>(range(item));
      int unknown = 0;
      int at = i + 1;
      boolean ends = false;
      while (at < items.size() && !ends) {
        WordItem next = items.get(at);
        switch (next.kind()) {
          case UNKNOWN -> {
            // "No mass flobbery": who knows of what.
            boolean tells = items.get(at - 1).kind() == WordItem.Kind.FINDING;
            unknown += tells ? MOST_UNKNOWN + 1 : 1;
            denied.addAll(range(next));
            at++;
          }
          case FILLER -> {
            boolean thing = lexicon.isListed("thing", words.subList(next.from(), next.to()));
            unknown += thing ? 1 : 0;
            at++;
          }
          case OR -> at++;
          case FINDING -> {
            ends = !range(next).stream().allMatch(stated::contains);
            boolean described = at > 0 && items.get(at - 1).kind() == WordItem.Kind.UNKNOWN;
            if (ends || described) {
              unknown = MOST_UNKNOWN + 1;
            }
            at++;
          }
          case COMMA -> {
            boolean goesOn =
                at + 2 < items.size()
                    && items.get(at + 1).kind() == WordItem.Kind.UNKNOWN
                    && items.get(at + 2).kind() == WordItem.Kind.OR;
            ends = !goesOn;
            at++;
          }
          case TURN, AND -> ends = true;
          default -> {
            ends = true;
            unknown = MOST_UNKNOWN + 1;
          }
        }
      }
      if (unknown > 0 && unknown <= MOST_UNKNOWN) {
        others.addAll(denied);
      }
    }
    return others;
  }

  // Chunks between breaks that hold nothing of the examination and no word that could turn
  // something round, only words of every day: "he's had quite a morning".
  private List<Set<Integer>> asides() {
    List<Set<Integer>> asides = new ArrayList<>();
    for (List<WordItem> chunk : WordItem.chunks(items)) {
      int from = isCounting(chunk) ? 0 : beginningOfTalk(chunk);
      Set<Integer> aside = new TreeSet<>();
      chunk.subList(from, chunk.size()).forEach(item -> aside.addAll(range(item)));
      asides.add(aside);
    }
    return asides;
  }

  // The whole of it, or what goes on behind "when", "because": "red when he's had a shout".
  private int beginningOfTalk(List<WordItem> chunk) {
    int from = chunk.size();
    while (from > 0 && isEveryday(chunk.get(from - 1))) {
      from--;
    }
    while (from > 0 && from < chunk.size() && !isSubordinate(chunk.get(from))) {
      from++;
    }
    return from;
  }

  private boolean isSubordinate(WordItem item) {
    return lexicon.isListed("subordinate", words.get(item.from()));
  }

  private boolean isEveryday(WordItem item) {
    return switch (item.kind()) {
      case FILLER, AND, TURN -> true;
      case UNKNOWN -> lexicon.isListed("aside", List.of(words.get(item.from())));
      default -> false;
    };
  }

  // "One, two, three, four, five."
  private boolean isCounting(List<WordItem> chunk) {
    return chunk.stream()
        .allMatch(
            item ->
                item.isEmpty()
                    || item.kind() == WordItem.Kind.AND
                    || item.kind() == WordItem.Kind.NUMBER
                        && isCount(words.subList(item.from(), item.to())));
  }

  private boolean covers(Claim kept, Claim claim) {
    if (FindingMerger.denies(claim, kept)) {
      return false;
    }
    if (lexicon.says("except", words) && kept.step().equals(claim.step()) && isNormal(claim)) {
      return true;
    }
    // "Puffy but clear": not so clear as to take it back.
    if (!isNormal(kept)
        && isNormal(claim)
        && kept.step().equals(claim.step())
        && kept.side() == claim.side()
        && kept.denied().isEmpty()
        && kept.value() != null
        && !words.contains("now")
        && (turnsBetween(kept, claim) || isAddedTo(kept, claim))) {
      return true;
    }
    boolean elsewhere = claim.step().equals("skin") && Objects.equals(kept.value(), claim.value());
    return elsewhere
        || kept.step().equals(claim.step())
            && kept.side() == claim.side()
            && (Objects.equals(kept.value(), claim.value()) || !claim.denied().isEmpty());
  }

  // "Folded from being squished, but it's well formed": what it comes to.
  private boolean isVerdict(Claim claim) {
    return findings(claim)
        .anyMatch(
            finding ->
                finding.from() >= 2
                    && lexicon.isListed("pronoun", words.get(finding.from() - 1))
                    && lexicon.isListed("parting", words.get(finding.from() - 2)));
  }

  // "Nipples normally placed, an extra one on the left"
  private boolean isAddedTo(Claim added, Claim normal) {
    return protocol.step(added.step()).many()
        && Collections.min(added.evidence()) > Collections.max(normal.evidence());
  }

  // "A strawberry mark, one centimetre"
  private boolean isSize(WordItem number, Claim claim) {
    return lexicon.isListed("size", words.get(number.to() - 1))
        && claim.value() != null
        && claim.denied().isEmpty()
        && !isNormal(claim)
        && protocol.step(claim.step()).details().stream()
            .noneMatch(detail -> detail.measure() != null)
        && isDescribed(claim, number);
  }

  private boolean turnsBetween(Claim one, Claim other) {
    int from = Math.min(Collections.max(one.evidence()), Collections.max(other.evidence()));
    int to = Math.max(Collections.max(one.evidence()), Collections.max(other.evidence()));
    return items.stream()
        .filter(item -> item.from() > from && item.from() < to)
        .anyMatch(
            item ->
                item.kind() == WordItem.Kind.TURN
                    && lexicon.isListed("parting", words.get(item.from())));
  }

  private boolean isCount(List<String> said) {
    return said.stream().allMatch(word -> lexicon.isListed("count", word));
  }

  // "Two testes", "the one hand"
  private boolean counts(WordItem number, Set<Integer> stated) {
    List<String> said = words.subList(number.from(), number.to());
    boolean ofFinding =
        isCount(said)
            && items.stream()
                .filter(item -> item.from() >= number.to() && !item.isEmpty())
                .findFirst()
                .filter(item -> item.kind() == WordItem.Kind.FINDING)
                .filter(item -> stated.contains(item.from()))
                .isPresent();
    boolean ofTime = number.to() < words.size() && lexicon.isListed("time", words.get(number.to()));
    return ofTime
        || ofFinding
        || said.equals(List.of("one"))
        || said.equals(List.of("oh"))
        || said.equals(List.of("two")) && stated.contains(number.to());
  }

  // The place of a finding, and praise that says nothing of its own.
  private boolean isBeside(WordItem item, List<Claim> settled) {
    if (item.kind() == WordItem.Kind.PART) {
      if (isPlaced(item)
          && !isTest(item)
          && settled.stream().anyMatch(claim -> isBefore(claim, item))) {
        return true;
      }
      return settled.stream()
          .anyMatch(
              claim ->
                  lexicon.isAnywhere(claim.step()) && claim.denied().isEmpty()
                      || item.match().steps(Sense.Kind.PLACE).contains(claim.step()));
    }
    List<String> said = words.subList(item.from(), item.to());
    if (item.kind() != WordItem.Kind.FINDING) {
      return false;
    }
    if (said.equals(List.of("there"))
        || lexicon.isListed("seen", said) && isBehind(item, settled)
        || isNamedLater(item, settled)
        || isDeniedAlone(item, settled)) {
      return true;
    }
    if (lexicon.isListed("filler", said)) {
      return settled.stream().anyMatch(claim -> claim.value() != null);
    }
    return describes(item) && isOfFormer(item, settled)
        || describes(item)
            && settled.stream()
                .anyMatch(
                    claim ->
                        claim.denied().isEmpty()
                            && (claim.evidence().contains(behindFillers(item.to()))
                                || claim.evidence().contains(item.from() - 1)));
  }

  // "Retractions are present"
  private boolean isBehind(WordItem seen, List<Claim> settled) {
    int before = seen.from() - 1;
    while (before >= 0 && isFilled(before)) {
      before--;
    }
    int word = before;
    return settled.stream()
        .filter(claim -> claim.value() != null && claim.denied().isEmpty())
        .anyMatch(claim -> claim.evidence().contains(word));
  }

  private boolean isFilled(int word) {
    return items.stream()
        .anyMatch(item -> item.isEmpty() && item.from() <= word && word < item.to());
  }

  // "Moving all limbs, no deformity": nothing is said to be there.
  private boolean isDeniedAlone(WordItem item, List<Claim> settled) {
    boolean normal = item.match().senses().stream().noneMatch(lexicon::isAbnormal);
    boolean alone =
        items.stream()
            .filter(other -> chunk(item).contains(other.from()))
            .allMatch(other -> other == item || other.isEmpty());
    return lexicon.denies(item.match(), words)
        && normal
        && alone
        && settled.stream().allMatch(claim -> claim.value() == null || isNormal(claim));
  }

  // The words between the breaks around an item.
  private Set<Integer> chunk(WordItem item) {
    return IntStream.range(breaks.from(item.from()), breaks.to(item.from()))
        .boxed()
        .collect(Collectors.toSet());
  }

  // "A swelling on top, that's a caput": what it is was told by name.
  private boolean isNamedLater(WordItem thing, List<Claim> settled) {
    return lexicon.isListed("thing", words.subList(thing.from(), thing.to()))
        && settled.stream()
            .filter(claim -> claim.value() != null && claim.denied().isEmpty() && !isNormal(claim))
            .map(claim -> claim.evidence().stream().min(Integer::compare).orElse(0))
            .anyMatch(
                first ->
                    first > thing.to()
                        && breaks.between(thing.to(), first)
                        && lexicon.says("refers-back", words.subList(thing.to(), first)));
  }

  // "A natal tooth, slightly mobile": nothing else is named there.
  private boolean isOfFormer(WordItem item, List<Claim> settled) {
    int from = breaks.from(item.from());
    return from > 0
        && items.stream()
            .filter(other -> other.from() >= from && other.to() <= item.from())
            .allMatch(other -> other.isEmpty() || describes(other))
        && settled.stream()
            .max(Comparator.comparing(claim -> Collections.max(claim.evidence())))
            .filter(last -> Collections.max(last.evidence()) < from)
            .filter(last -> last.value() != null && !isNormal(last))
            .isPresent();
  }

  private boolean describes(WordItem item) {
    List<String> said = words.subList(item.from(), item.to());
    return Stream.of("severity", "neutral", "describes")
        .anyMatch(list -> lexicon.isListed(list, said));
  }

  private int behindFillers(int word) {
    return items.stream()
        .filter(item -> item.from() >= word && !item.isEmpty())
        .filter(item -> item.kind() != WordItem.Kind.FINDING || !describes(item))
        .mapToInt(WordItem::from)
        .findFirst()
        .orElse(-1);
  }

  // "In the white of the eye": a structure behind a preposition tells where the finding is.
  private boolean isPlaced(WordItem part) {
    int before = part.from() - 1;
    while (before >= 0 && lexicon.isListed("place-determiner", words.get(before))) {
      before--;
    }
    return before >= 0 && lexicon.isListed("place-preposition", words.get(before));
  }

  // "On Barlow" tells what was done, not where something was found.
  private boolean isTest(WordItem part) {
    return part.match().senses().stream()
        .map(Sense::step)
        .filter(Objects::nonNull)
        .map(protocol::step)
        .anyMatch(step -> step.value("positive").isPresent());
  }

  private static boolean isBefore(Claim claim, WordItem part) {
    return claim.value() != null
        && claim.denied().isEmpty()
        && claim.evidence().stream().allMatch(word -> word < part.from());
  }

  // No unknown word stands between what makes the claim, nor behind praise that it may belong to.
  private boolean isWhole(Claim claim) {
    int from = first(claim);
    int to = claim.evidence().stream().max(Integer::compare).orElse(0);
    if (unknownBeside(from, to) > MOST_UNKNOWN) {
      return false;
    }
    for (WordItem item : items) {
      boolean between = item.from() > from && item.from() < to && isAmong(item, claim);
      boolean next = item.from() == to + 1 || item.to() == from;
      if (item.kind() == WordItem.Kind.UNKNOWN
          && (between || next && (suspected.contains(item.from()) || isPraised(item)))) {
        return false;
      }
    }
    return true;
  }

  // "The left femoral I'm not sure of, the right is strong": what is named before is no part of it.
  private int first(Claim claim) {
    return claim.evidence().stream()
        .filter(
            word ->
                items.stream()
                    .filter(item -> item.from() <= word && word < item.to())
                    .noneMatch(item -> item.kind() == WordItem.Kind.PART))
        .min(Integer::compare)
        .orElse(claim.evidence().stream().min(Integer::compare).orElse(0));
  }

  // A denial before it that nobody could place may turn it round.
  private boolean isDenied(Claim claim, Set<Integer> unaccounted) {
    int to = claim.evidence().stream().max(Integer::compare).orElse(0);
    int from = breaks.from(first(claim));
    return items.stream()
        .filter(item -> item.from() >= from && item.from() <= to)
        .filter(item -> unaccounted.contains(item.from()))
        .anyMatch(
            item ->
                item.kind() == WordItem.Kind.NOT
                    || item.kind() == WordItem.Kind.FINDING && lexicon.denies(item.match(), words));
  }

  // Whether words of the claim stand on both sides of it in its own chunk.
  private boolean isAmong(WordItem item, Claim claim) {
    int from = breaks.from(item.from());
    int to = breaks.to(item.to());
    return claim.evidence().stream().anyMatch(word -> word >= from && word < item.from())
        && claim.evidence().stream().anyMatch(word -> word >= item.to() && word < to);
  }

  // "A good stare": of what is good, only the unknown word behind it tells.
  private boolean isPraised(WordItem unknown) {
    return unknown.from() > 0
        && lexicon.isListed("good", words.subList(unknown.from() - 1, unknown.from()));
  }

  // Unknown words in the chunks that the claim stands in.
  private long unknownBeside(int from, int to) {
    int first = breaks.from(from);
    int last = breaks.to(to);
    return items.stream()
        .filter(item -> item.kind() == WordItem.Kind.UNKNOWN)
        .filter(item -> item.from() >= first && item.from() < last)
        .count();
  }

  private Set<Integer> fillers() {
    Set<Integer> fillers = new TreeSet<>();
    for (WordItem item : items) {
      if (item.kind() == WordItem.Kind.FILLER
          && FILLERS.stream()
              .anyMatch(list -> lexicon.isListed(list, words.subList(item.from(), item.to())))) {
        fillers.addAll(range(item));
      }
    }
    return fillers;
  }

  private static Set<Integer> range(WordItem item) {
    Set<Integer> range = new TreeSet<>();
    for (int word = item.from(); word < item.to(); word++) {
      range.add(word);
    }
    return range;
  }

  // Counting without breaks

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

  private Claim plain(Claim claim) {
    return new Claim(
        claim.step(),
        claim.side(),
        claim.value(),
        claim.denied(),
        claim.numbers(),
        plain(claim.evidence()));
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
