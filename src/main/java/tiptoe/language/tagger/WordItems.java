package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tiptoe.language.TypedText;

/**
 * Says of each word of a sentence what it is: a term of the lexicon, a number, a word of one of the
 * lists that carry nothing or that make the sentence no finding, or unknown.
 */
final class WordItems {
  private static final Map<String, WordItem.Kind> LISTS =
      Map.ofEntries(
          Map.entry("filler", WordItem.Kind.FILLER),
          Map.entry("function", WordItem.Kind.FILLER),
          Map.entry("neutral", WordItem.Kind.FILLER),
          Map.entry("little", WordItem.Kind.FILLER),
          Map.entry("severity", WordItem.Kind.FILLER),
          Map.entry("elsewhere", WordItem.Kind.FILLER),
          Map.entry("correction", WordItem.Kind.CORRECTION),
          Map.entry("same", WordItem.Kind.SAME),
          Map.entry("doubt", WordItem.Kind.DOUBT),
          Map.entry("other", WordItem.Kind.OTHER),
          Map.entry("concern", WordItem.Kind.CONCERN),
          Map.entry("later", WordItem.Kind.PLAN),
          Map.entry("question", WordItem.Kind.DOUBT),
          Map.entry("again", WordItem.Kind.PLAN),
          Map.entry("others", WordItem.Kind.FOREIGN),
          Map.entry("defines", WordItem.Kind.FOREIGN),
          Map.entry("describes", WordItem.Kind.DESCRIPTION),
          Map.entry("general", WordItem.Kind.FOREIGN));
  private static final int MOST_COMPARED = 5;
  private static final Set<String> ARTICLES = Set.of("a", "an");
  private static final Set<String> AROUND = Set.of("round", "around");
  private static final Set<String> DENIALS = Set.of("no", "not", "never", "nothing", "without");
  private static final Set<WordItem.Kind> UNSETTLED =
      EnumSet.of(
          WordItem.Kind.UNKNOWN,
          WordItem.Kind.DOUBT,
          WordItem.Kind.PLAN,
          WordItem.Kind.FOREIGN,
          WordItem.Kind.CONCERN,
          WordItem.Kind.CORRECTION);

  private final LayLexicon lexicon;
  private final Corrections corrections;
  private final Map<String, List<Entry>> byFirst = new HashMap<>();

  private record Entry(String list, List<String> words, String last, WordItem.Kind kind) {
    Entry(String list, List<String> words, WordItem.Kind kind) {
      this(list, words, words.get(words.size() - 1), kind);
    }
  }

  WordItems(LayLexicon lexicon) {
    this.lexicon = lexicon;
    this.corrections = new Corrections(lexicon);
    // In one order always: "wait" is in two lists.
    LISTS.entrySet().stream()
        .sorted(
            Map.Entry.<String, WordItem.Kind>comparingByValue()
                .thenComparing(Map.Entry.comparingByKey()))
        .forEach(
            list ->
                lexicon
                    .list(list.getKey())
                    .forEach(
                        words ->
                            byFirst
                                .computeIfAbsent(words.get(0), word -> new ArrayList<>())
                                .add(new Entry(list.getKey(), words, list.getValue()))));
  }

  /** The items of a sentence, in order; each word is in one of them. */
  List<WordItem> of(List<String> words) {
    List<TermMatch> all = lexicon.matches(words);
    List<TermMatch> matches =
        all.stream()
            .filter(match -> !isIdle(words, match, all) && !isAdverb(words, match))
            .filter(match -> !isHalf(words, match, all) && !isOfThing(words, match))
            .filter(match -> !isOpener(words, match))
            .toList();
    List<WordItem> found = new ArrayList<>();
    for (TermMatch match : matches) {
      found.add(item(kind(match, matches), match));
    }
    for (Numbers.At number : Numbers.in(words, matches)) {
      if (!isPronoun(words, number)) {
        found.add(WordItem.of(WordItem.Kind.NUMBER, number.from(), number.to()));
      }
    }
    for (int at = 0; at < words.size(); at++) {
      found.addAll(listed(words, at));
    }
    if (asks(words)) {
      found.add(WordItem.of(WordItem.Kind.DOUBT, 0, 2));
      found.removeIf(item -> item.from() < 2 && item.kind() != WordItem.Kind.DOUBT);
    }
    // "Right, over you go": no side.
    if (words.size() > 1 && words.get(0).equals("right") && words.get(1).equals(TypedText.BREAK)) {
      found.removeIf(item -> item.from() == 0);
      found.add(WordItem.of(WordItem.Kind.FILLER, 0, 1));
    }
    // "Fifty-one, no, fifty-two": it takes back what was said.
    found.replaceAll(
        item ->
            item.kind() == WordItem.Kind.NOT
                    && item.to() == item.from() + 1
                    && new Breaks(words).isBareNo(item.from())
                ? WordItem.of(WordItem.Kind.CORRECTION, item.from(), item.to())
                : item);
    // "Weaker than the right": the side is that of something else.
    found.replaceAll(item -> isCompared(words, item) ? filler(item) : item);
    // "It doesn't abduct fully either": no side.
    found.replaceAll(item -> isAlso(words, item) ? filler(item) : item);
    // "On that same right side": the side, and no finding as on the other.
    found.replaceAll(item -> isSameSide(words, item) ? filler(item) : item);
    List<WordItem> known = longestFirst(found);
    all.stream()
        .filter(match -> !matches.contains(match))
        .filter(match -> match.is(Sense.Kind.VALUE))
        .filter(match -> !isHalf(words, match, all) && !isOfThing(words, match))
        .filter(match -> known.stream().noneMatch(item -> item.match().overlaps(match)))
        .filter(match -> match.words() > 1 || lexicon.denies(match, words))
        .forEach(match -> known.add(item(WordItem.Kind.FINDING, match)));
    List<WordItem> items = corrections.in(words, fill(words, known));
    compare(words, items);
    contrast(words, items);
    items.replaceAll(item -> isNotThat(words, item) ? filler(item) : item);
    supersede(words, items);
    turn(words, items);
    seek(words, items);
    handle(words, items);
    items.replaceAll(item -> isCount(words, items, item) ? filler(item) : item);
    items.replaceAll(item -> isContext(words, item, matches) ? filler(item) : item);
    for (int i = 1; i < items.size(); i++) {
      if (beginsPlan(words, items, i)) {
        items.set(i, comma(items.get(i)));
      }
    }
    if (!items.isEmpty() && new Talk(lexicon, words).isAll()) {
      items.set(0, WordItem.of(WordItem.Kind.FOREIGN, items.get(0).from(), items.get(0).to()));
    }
    return items;
  }

  // "Sats", without which nobody knows what "right hand ninety-eight" is.
  private boolean isContext(List<String> words, WordItem item, List<TermMatch> matches) {
    List<String> said = words.subList(item.from(), item.to());
    return item.kind() == WordItem.Kind.UNKNOWN
        && matches.stream()
            .flatMap(match -> match.steps(Sense.Kind.PART).stream())
            .anyMatch(step -> lexicon.context(step).contains(said));
  }

  // "It goes back in easily": no structure.
  // "Crackles down low", "we get air down the left": where, not how much air comes in.
  private boolean isAdverb(List<String> words, TermMatch match) {
    List<String> said = words.subList(match.from(), match.to());
    // "They'll be up to see you": only of what is named there.
    if (said.equals(List.of("up"))) {
      int from = new Breaks(words).from(match.from());
      return from < match.from()
          && lexicon.isListed("before-up", words.get(match.from() - 1))
          && lexicon.matches(words.subList(from, match.from())).stream()
              .flatMap(before -> before.steps(Sense.Kind.PART).stream())
              .noneMatch(match.steps(Sense.Kind.VALUE)::contains);
    }
    if (said.equals(List.of("down"))) {
      boolean along =
          match.to() < words.size()
              && lexicon.isListed("pointing", words.get(match.to()))
              && words.subList(new Breaks(words).from(match.from()), match.from()).stream()
                  .anyMatch(word -> lexicon.isListed("goes-down", word));
      if (along) {
        return true;
      }
      return lexicon.matches(words.subList(0, match.from())).stream()
          .anyMatch(before -> before.to() == match.from() && before.is(Sense.Kind.VALUE));
    }
    return words.subList(match.from(), match.to()).equals(List.of("back"))
        && !new Breaks(words).at(match.from() - 1)
        && !lexicon.isListed("before-back", words.get(match.from() - 1));
  }

  // "Okay eyes, red reflex present in both": it opens the sentence, and says nothing of the eyes.
  private boolean isOpener(List<String> words, TermMatch match) {
    return match.is(Sense.Kind.VALUE)
        && !new Breaks(words).at(match.to())
        && lexicon.isListed("good", words.subList(match.from(), match.to()))
        && words.subList(0, match.to()).stream().allMatch(w -> lexicon.isListed("opener", w));
  }

  // "Coming out" of a hip is a finding; where no hip is named it says what it says every day.
  private boolean isIdle(List<String> words, TermMatch match, List<TermMatch> all) {
    return match.is(Sense.Kind.VALUE)
        && !lexicon.isListed("seen", words.subList(match.from(), match.to()))
        && match.senses().stream()
            .allMatch(sense -> sense.kind() == Sense.Kind.VALUE && sense.bound())
        && all.stream()
            .filter(other -> other != match)
            .flatMap(other -> other.senses().stream())
            .filter(sense -> sense.kind() == Sense.Kind.PART || !sense.bound())
            .noneMatch(sense -> isOfRegion(match, sense));
  }

  private boolean isOfRegion(TermMatch match, Sense sense) {
    return sense.step() != null
        && match.steps(Sense.Kind.VALUE).stream()
            .anyMatch(step -> lexicon.near(step, sense.step()));
  }

  // "Palate intact and i'll do the eyes later": what is planned is a sentence of its own.
  private boolean beginsPlan(List<String> words, List<WordItem> items, int and) {
    WordItem item = items.get(and);
    if (item.kind() != WordItem.Kind.AND
        || item.to() == words.size()
        || !lexicon.isListed("planner", words.get(item.to()))) {
      return false;
    }
    List<WordItem> before = items.subList(0, and);
    List<WordItem> behind = items.subList(and + 1, items.size());
    return before.stream().map(WordItem::kind).noneMatch(UNSETTLED::contains)
        && behind.stream().anyMatch(one -> one.kind() == WordItem.Kind.PLAN)
        && behind.stream().noneMatch(one -> one.kind() == WordItem.Kind.UNKNOWN);
  }

  private static WordItem comma(WordItem item) {
    return WordItem.of(WordItem.Kind.COMMA, item.from(), item.to());
  }

  // "Hoarse rather than high pitched", "on the underside instead of the tip": what it is not.
  private void contrast(List<String> words, List<WordItem> items) {
    for (int i = 0; i + 2 < items.size(); i++) {
      List<String> said =
          List.of(words.get(items.get(i).from()), words.get(items.get(i + 1).from()));
      if (lexicon.isListed("than-that", said.get(0)) && isMoreOf(words, items.get(i).from())) {
        int to = i + 1;
        while (to < items.size() && items.get(to).isEmpty()) {
          to++;
        }
        boolean other = to < items.size() && items.get(to).kind() == WordItem.Kind.FINDING;
        items.subList(i, other ? to + 1 : i).replaceAll(WordItems::filler);
      }
      if (lexicon.isListed("contrast", said)) {
        int to = i + 2;
        while (to < items.size()
            && (items.get(to).isEmpty()
                || items.get(to).kind() == WordItem.Kind.UNKNOWN
                || items.get(to).kind() == WordItem.Kind.SIDE
                || items.get(to).kind() == WordItem.Kind.PART
                || items.get(to).kind() == WordItem.Kind.FINDING)) {
          to++;
        }
        items.subList(i, to).replaceAll(WordItems::filler);
      }
    }
  }

  // "More of a click than a clunk"
  private boolean isMoreOf(List<String> words, int than) {
    return lexicon.says("more-of", words.subList(new Breaks(words).from(than), than));
  }

  // "Not teeth, just little pearls": what it is not tells what was found, and not that all is well.
  private boolean isNotThat(List<String> words, WordItem item) {
    return item.kind() == WordItem.Kind.FINDING
        && words.get(item.from()).equals("not")
        && item.to() + 1 < words.size()
        && words.get(item.to()).equals(TypedText.BREAK)
        && lexicon.isListed("but-that", words.get(item.to() + 1))
        && item.match().steps(Sense.Kind.VALUE).stream()
            .noneMatch(step -> lexicon.isStepListed("large-or-not", step));
  }

  // "I thought I heard a murmur, no murmur": what was found in the end counts.
  private void supersede(List<String> words, List<WordItem> items) {
    List<List<WordItem>> chunks = WordItem.chunks(items);
    for (int i = 0; i < chunks.size(); i++) {
      List<WordItem> first = chunks.get(i);
      boolean thought =
          !first.isEmpty()
              && lexicon.says(
                  "thought-first",
                  words.subList(first.get(0).from(), first.get(first.size() - 1).to()));
      Set<String> steps = steps(first);
      boolean found =
          chunks.subList(i + 1, chunks.size()).stream()
              .anyMatch(
                  later ->
                      !Collections.disjoint(named(later), steps)
                          && later.stream().anyMatch(o -> o.kind() == WordItem.Kind.FINDING));
      if (thought && found) {
        first.replaceAll(WordItems::filler);
      }
    }
  }

  // "Lying on his left side, Barlow negative", "turn to the left": no side of what is found.
  private void turn(List<String> words, List<WordItem> items) {
    for (List<WordItem> chunk : WordItem.chunks(items)) {
      boolean finds =
          chunk.stream()
              .anyMatch(
                  item ->
                      item.kind() == WordItem.Kind.FINDING || item.kind() == WordItem.Kind.PART);
      if (!finds) {
        chunk.replaceAll(
            item ->
                item.kind() == WordItem.Kind.SIDE
                        && lexicon.says(
                            "turned-to", words.subList(chunk.get(0).from(), item.from()))
                    ? filler(item)
                    : item);
      }
    }
  }

  private static Set<String> named(List<WordItem> items) {
    Set<String> steps = new HashSet<>();
    for (WordItem item : items) {
      item.match().senses().stream()
          .filter(sense -> sense.step() != null && !sense.bound())
          .forEach(sense -> steps.add(sense.step()));
    }
    return steps;
  }

  private static Set<String> steps(List<WordItem> items) {
    Set<String> steps = new HashSet<>();
    for (WordItem item : items) {
      steps.addAll(item.match().steps(Sense.Kind.PART));
      steps.addAll(item.match().steps(Sense.Kind.VALUE));
    }
    return steps;
  }

  // "Feeble compared with the brachial": of what is not normal it tells how much.
  private void compare(List<String> words, List<WordItem> items) {
    for (int i = 1; i < items.size(); i++) {
      boolean compares = words.get(items.get(i).from()).equals("compared");
      int to = i + 1;
      while (to < items.size()
          && to - i < MOST_COMPARED
          && (items.get(to).isEmpty()
              || items.get(to).kind() == WordItem.Kind.SIDE
              || items.get(to).kind() == WordItem.Kind.PART)) {
        to++;
      }
      if (compares && lexicon.isAbnormal(findingBefore(items, i))) {
        items.subList(i, to).replaceAll(WordItems::filler);
      }
    }
  }

  // "We check the hips for clicks": what is looked for is not yet found.
  private void seek(List<String> words, List<WordItem> items) {
    boolean seeks = false;
    for (int i = 0; i < items.size(); i++) {
      WordItem item = items.get(i);
      List<String> said = words.subList(item.from(), item.to());
      seeks = item.kind() != WordItem.Kind.COMMA && (seeks || lexicon.says("seeks", said));
      if (seeks && said.contains("for") && item.kind() != WordItem.Kind.FINDING) {
        items.set(i, WordItem.of(WordItem.Kind.PLAN, item.from(), item.to()));
      }
    }
  }

  // "Both hands around the skull": what the examiner's hands do, where nothing is found there.
  private void handle(List<String> words, List<WordItem> items) {
    for (List<WordItem> chunk : WordItem.chunks(items)) {
      int hands = 0;
      while (hands < chunk.size()
          && (chunk.get(hands).isEmpty() || chunk.get(hands).kind() == WordItem.Kind.SIDE)) {
        hands++;
      }
      boolean handles =
          hands + 1 < chunk.size()
              && chunk.get(hands).kind() == WordItem.Kind.PART
              && lexicon.isListed("hands", words.get(chunk.get(hands).to() - 1))
              && lexicon.isListed("holding", words.get(chunk.get(hands).to()))
              && chunk.stream()
                  .allMatch(
                      item ->
                          item.isEmpty()
                              || item.kind() == WordItem.Kind.PART
                              || item.kind() == WordItem.Kind.SIDE
                              || item.kind() == WordItem.Kind.AND);
      if (handles) {
        chunk.replaceAll(WordItems::filler);
      }
    }
  }

  // "The two of them together on the left", "Barlow and Ortolani on the right both fine": how many,
  // not where.
  private static boolean isCount(List<String> words, List<WordItem> items, WordItem item) {
    if (item.kind() == WordItem.Kind.SIDE
        && words.subList(item.from(), item.to()).equals(List.of("both"))
        && countsStructures(words, items, item)) {
      return true;
    }
    if (item.kind() != WordItem.Kind.SIDE
        || !words.subList(item.from(), item.to()).contains("two")) {
      return false;
    }
    for (int i = items.indexOf(item) + 1; i < items.size(); i++) {
      WordItem next = items.get(i);
      if (next.kind() == WordItem.Kind.SIDE || SentenceReader.isThatSide(words, next)) {
        return next.sides().size() <= 1;
      }
      if (next.kind() == WordItem.Kind.COMMA
          || next.kind() == WordItem.Kind.TURN
          || next.kind() == WordItem.Kind.AND) {
        return false;
      }
    }
    return false;
  }

  // Behind two structures in a row, where one side is named beside them: "on the right Barlow and
  // Ortolani are both negative", "… both negative on that side".
  private static boolean countsStructures(List<String> words, List<WordItem> items, WordItem both) {
    int at = items.indexOf(both);
    List<WordItem> chunk =
        WordItem.chunks(items).stream().filter(one -> one.contains(both)).findFirst().orElseThrow();
    long sides =
        chunk.stream()
            .filter(item -> item.kind() == WordItem.Kind.SIDE && item != both)
            .flatMap(item -> item.sides().stream())
            .distinct()
            .count();
    List<List<WordItem>> chunks = WordItem.chunks(items);
    int next = chunks.indexOf(chunk) + 1;
    boolean ofOneSide =
        sides == 1
            || sides == 0 && next < chunks.size() && isLoneSide(chunks.get(next))
            || sides == 0
                && chunk.stream().anyMatch(item -> SentenceReader.isThatSide(words, item));
    List<WordItem.Kind> before =
        items.subList(0, at).stream()
            .filter(item -> !item.isEmpty() && item.kind() != WordItem.Kind.SIDE)
            .map(WordItem::kind)
            .toList();
    int last = before.size();
    return ofOneSide
        && last >= 3
        && before.get(last - 3) == WordItem.Kind.PART
        && (before.get(last - 2) == WordItem.Kind.AND
            || before.get(last - 2) == WordItem.Kind.COMMA)
        && before.get(last - 1) == WordItem.Kind.PART;
  }

  // "…, on the left": one side, and nothing else.
  private static boolean isLoneSide(List<WordItem> chunk) {
    List<WordItem> said = chunk.stream().filter(item -> !item.isEmpty()).toList();
    return said.size() == 1 && said.get(0).sides().size() == 1;
  }

  // "Navel skin clear": not all of the skin; "well folded": not what is folded over.
  private boolean isHalf(List<String> words, TermMatch match, List<TermMatch> all) {
    if (!match.is(Sense.Kind.VALUE)) {
      return false;
    }
    String before = match.from() == 0 ? TypedText.BREAK : words.get(match.from() - 1);
    boolean ofPart =
        words.get(match.from()).equals("skin")
            && match.steps(Sense.Kind.VALUE).contains("skin")
            && all.stream().anyMatch(o -> o.to() == match.from() && o.is(Sense.Kind.PART));
    // "A bit of yellow discharge": it is the discharge that is yellow, not the skin.
    boolean ofThing =
        lexicon.isListed("colour-of", words.get(match.to() - 1))
            && all.stream()
                .filter(o -> o.from() >= match.from() && o.from() <= match.to())
                .filter(o -> o.to() > match.to() && o.is(Sense.Kind.VALUE))
                .anyMatch(
                    o ->
                        Collections.disjoint(
                            o.steps(Sense.Kind.VALUE), match.steps(Sense.Kind.VALUE)));
    boolean wellDone =
        lexicon.isListed("well", before)
            && words.get(match.to() - 1).endsWith("ed")
            && lexicon.isAbnormal(match);
    return ofPart || ofThing || wellDone;
  }

  // "A pale spot in the middle", "the tape's squint", "I've blocked one": of a mark, a tool, or
  // what the examiner did.
  private boolean isOfThing(List<String> words, TermMatch match) {
    // "Round the head it's thirty-five": where the tape goes, and no shape.
    if (match.is(Sense.Kind.VALUE)
        && match.words() > 1
        && AROUND.contains(words.get(match.from()))
        && lexicon.isListed("determiner", words.get(match.from() + 1))) {
      return true;
    }
    // "Well done the wee one": no urine.
    if (words.get(match.to() - 1).equals("wee")
        && match.to() < words.size()
        && lexicon.isListed("wee-one", words.get(match.to()))) {
      return true;
    }
    if (match.is(Sense.Kind.VALUE) && isOfLump(words, match)) {
      return true;
    }
    String before = match.from() == 0 ? TypedText.BREAK : words.get(match.from() - 1);
    boolean done =
        lexicon.isListed("did", before)
            && words.get(match.from()).endsWith("ed")
            && (match.to() == match.from() + 1
                || match.to() == match.from() + 2
                    && lexicon.isListed("done-with", words.get(match.from() + 1)));
    if (match.is(Sense.Kind.VALUE) && done) {
      return true;
    }
    if (!match.is(Sense.Kind.VALUE) || !lexicon.isAbnormal(match)) {
      return false;
    }
    String behind = match.to() < words.size() ? words.get(match.to()) : TypedText.BREAK;
    boolean ofMark =
        match.steps(Sense.Kind.VALUE).equals(Set.of("colour")) && lexicon.isListed("mark", behind);
    // "And a wee": an adjective has its noun.
    boolean noun =
        lexicon.isListed("severity", words.subList(match.from(), match.to()))
            && ARTICLES.contains(before)
            && new Breaks(words).at(match.to());
    return ofMark || noun || lexicon.isListed("tool", before);
  }

  // "The lump is firm", "a mass on the left, it feels hard": not the belly.
  private boolean isOfLump(List<String> words, TermMatch match) {
    if (!lexicon.isListed("consistency", words.subList(match.from(), match.to()))) {
      return false;
    }
    int at = match.from() - 1;
    while (at >= 0
        && (words.get(at).equals(TypedText.BREAK) || lexicon.isListed("of-lump", words.get(at)))) {
      at--;
    }
    return at >= 0 && (lexicon.isListed("lump", words.get(at)) || isOfLumpBefore(words, match));
  }

  // "A mass in the left side of the tummy, firm, the size of a plum"
  private boolean isOfLumpBefore(List<String> words, TermMatch match) {
    Breaks breaks = new Breaks(words);
    int from = breaks.from(match.from());
    return from > 0
        && words.subList(from, breaks.to(match.from())).stream()
            .allMatch(
                word -> lexicon.isListed("of-lump", word) || lexicon.isListed("consistency", word))
        && lexicon.says("lump", words.subList(breaks.from(from - 1), from - 1));
  }

  private static TermMatch findingBefore(List<WordItem> items, int i) {
    TermMatch last = items.get(i).match();
    for (int at = i - 1; at >= 0 && items.get(at).kind() != WordItem.Kind.COMMA; at--) {
      if (items.get(at).kind() == WordItem.Kind.FINDING) {
        return items.get(at).match();
      }
    }
    return last;
  }

  // "No jaundice neither": as "either", and denies what is denied.
  private static boolean isAlso(List<String> words, WordItem item) {
    List<String> said = words.subList(item.from(), item.to());
    Breaks breaks = new Breaks(words);
    boolean denied =
        words.subList(breaks.from(item.from()), item.from()).stream().anyMatch(DENIALS::contains);
    return breaks.at(item.to())
        && (item.kind() == WordItem.Kind.SIDE && said.equals(List.of("either"))
            || item.kind() == WordItem.Kind.NOT && said.equals(List.of("neither")) && denied);
  }

  private static boolean isSameSide(List<String> words, WordItem item) {
    return item.kind() == WordItem.Kind.SAME
        && words.get(item.to() - 1).equals("same")
        && item.to() < words.size()
        && Set.of("left", "right", "side").contains(words.get(item.to()));
  }

  private static boolean isCompared(List<String> words, WordItem item) {
    int before = item.from() - 1;
    while (before >= 0 && Set.of("the", "on", "his", "her").contains(words.get(before))) {
      before--;
    }
    if (item.kind() != WordItem.Kind.SIDE || before < 0) {
      return false;
    }
    boolean as =
        words.get(before).equals("as")
            && words.subList(Math.max(0, before - 4), before).contains("as");
    boolean than = words.get(before).equals("than") || words.get(before).equals("like");
    int behind = item.to();
    while (behind < words.size()
        && (words.get(behind).equals("one") || words.get(behind).equals(TypedText.BREAK))) {
      behind++;
    }
    boolean spokenOf = behind < words.size() && words.get(behind).equals("which");
    return (than || as) && !spokenOf;
  }

  private static WordItem filler(WordItem item) {
    return WordItem.of(WordItem.Kind.FILLER, item.from(), item.to());
  }

  private static WordItem item(WordItem.Kind kind, TermMatch match) {
    TermMatch only =
        switch (kind) {
          case PART -> match.only(Sense.Kind.PART, Sense.Kind.PLACE);
          case FINDING -> match.only(Sense.Kind.VALUE);
          default -> match;
        };
    return new WordItem(kind, match.from(), match.to(), only);
  }

  private boolean isPronoun(List<String> words, Numbers.At number) {
    return words.subList(number.from(), number.to()).equals(List.of("one"))
        && number.from() > 0
        && lexicon.isListed("points-at", words.get(number.from() - 1));
  }

  private List<WordItem> listed(List<String> words, int at) {
    List<WordItem> found = new ArrayList<>();
    for (Entry entry : byFirst.getOrDefault(words.get(at), List.of())) {
      int end = end(entry, words, at);
      if (entry.words().get(0).equals("right")
          && at > 0
          && lexicon.isListed("leads-a-side", words.get(at - 1))) {
        end = 0;
      }
      // "If I wait for a breath": nothing is put right.
      if (entry.words().equals(List.of("wait"))
          && at > 0
          && lexicon.isListed("waits", words.get(at - 1))) {
        end = 0;
      }
      boolean asks = entry.list().equals("question") && !isAsked(words, at);
      boolean defines = end > 0 && entry.list().equals("defines") && !isDefined(words, at);
      if (end > 0 && !asks && !defines) {
        found.add(WordItem.of(entry.kind(), at, end));
      }
    }
    if (lexicon.isAddress(words, at)) {
      found.add(WordItem.of(WordItem.Kind.FILLER, at, at + 1));
      found.removeIf(item -> item.kind() == WordItem.Kind.FOREIGN);
    }
    return found;
  }

  // A question begins with its verb, or with what it asks for; "the reflex is there" does not.
  private boolean isAsked(List<String> words, int at) {
    return new Breaks(words).at(at - 1) || lexicon.isListed("before-a-question", words.get(at - 1));
  }

  // "Are those white bumps", "have we had a dirty nappy yet": whatever the verb.
  private boolean asks(List<String> words) {
    return words.size() > 2
        && lexicon.isListed("asking", words.get(0))
        && lexicon.isListed("asked-of", words.get(1));
  }

  // "A hydrocele is a …": said of what a finding is; of a structure of this baby only where "a"
  // makes
  // it any.
  private boolean isDefined(List<String> words, int at) {
    boolean any = Set.of("a", "an").contains(words.get(0));
    return lexicon.matches(words.subList(0, at)).stream()
        .anyMatch(match -> match.to() == at && (match.is(Sense.Kind.VALUE) || any));
  }

  // A break may stand between the words: "no, wait".
  private static int end(Entry entry, List<String> words, int from) {
    boolean corrects = entry.kind() == WordItem.Kind.CORRECTION;
    int last = from + entry.words().size() - 1;
    // There are hundreds that begin with "i" or "that's".
    if (!corrects && !(last < words.size() && words.get(last).equals(entry.last()))) {
      return 0;
    }
    int at = from;
    for (String word : entry.words()) {
      if (corrects && at > from && at < words.size() && words.get(at).equals(TypedText.BREAK)) {
        at++;
      }
      if (at >= words.size() || !words.get(at).equals(word)) {
        return 0;
      }
      at++;
    }
    return at;
  }

  private static WordItem.Kind kind(TermMatch match, List<TermMatch> all) {
    if (match.is(Sense.Kind.CUE)) {
      return match.isCue("turn")
          ? WordItem.Kind.TURN
          : match.isCue("no")
              ? WordItem.Kind.NOT
              : match.isCue("talk") ? WordItem.Kind.FILLER : WordItem.Kind.SIDE;
    }
    boolean finding = match.is(Sense.Kind.VALUE);
    if (!finding || !match.is(Sense.Kind.PART)) {
      return finding ? WordItem.Kind.FINDING : WordItem.Kind.PART;
    }
    Set<String> parts = new HashSet<>();
    Set<String> values = new HashSet<>();
    for (TermMatch other : all) {
      if (other != match) {
        parts.addAll(other.steps(Sense.Kind.PART));
        values.addAll(other.steps(Sense.Kind.VALUE));
      }
    }
    if (match.steps(Sense.Kind.VALUE).stream().anyMatch(parts::contains)) {
      return WordItem.Kind.FINDING;
    }
    boolean named = match.steps(Sense.Kind.PART).stream().anyMatch(values::contains);
    boolean free =
        match.senses().stream()
            .anyMatch(sense -> sense.kind() == Sense.Kind.VALUE && !sense.bound());
    return named || !free ? WordItem.Kind.PART : WordItem.Kind.FINDING;
  }

  private static List<WordItem> longestFirst(List<WordItem> all) {
    List<WordItem> kept = new ArrayList<>();
    all.stream()
        .sorted(
            Comparator.comparingInt((WordItem item) -> item.match().words())
                .reversed()
                .thenComparing(item -> item.match().senses().isEmpty())
                .thenComparing(item -> item.kind() == WordItem.Kind.FILLER)
                .thenComparingInt(WordItem::from))
        .filter(
            item ->
                kept.stream()
                    .noneMatch(other -> item.from() < other.to() && other.from() < item.to()))
        .forEach(kept::add);
    kept.sort(Comparator.comparingInt(WordItem::from));
    return kept;
  }

  private static List<WordItem> fill(List<String> words, List<WordItem> known) {
    List<WordItem> items = new ArrayList<>(Collections.nCopies(words.size(), null));
    known.forEach(item -> items.set(item.from(), item));
    List<WordItem> all = new ArrayList<>();
    int at = 0;
    while (at < words.size()) {
      WordItem item = items.get(at);
      if (item == null) {
        item = WordItem.of(kind(words, at), at, at + 1);
      }
      all.add(item);
      at = item.to();
    }
    return all;
  }

  private static WordItem.Kind kind(List<String> words, int at) {
    return switch (words.get(at)) {
      case TypedText.BREAK -> WordItem.Kind.COMMA;
      case TypedText.ASKS -> WordItem.Kind.FOREIGN;
      case "and", "plus", "then" -> WordItem.Kind.AND;
      case "or", "nor" -> WordItem.Kind.OR;
      case "one", "ones", "side", "side's", "sides", "sided" -> WordItem.Kind.FILLER;
      default -> WordItem.Kind.UNKNOWN;
    };
  }
}
