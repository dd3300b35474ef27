package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.language.TypedText;

/** The lay lexicon: words of the ward and what they stand for. */
final class LayLexicon {
  private static final int MOST_LITTLE_WORDS = 2;
  private static final Set<String> KEEP_THEIR_S =
      Set.of("he's", "she's", "it's", "there's", "that's", "let's", "here's", "what's");

  private static final int MOST_BETWEEN_DENIAL = 4;
  private static final SortedMap<Integer, Term> NONE = Collections.emptySortedMap();

  private final List<Term> terms;
  private final Map<String, List<Term>> byFirstWord = new HashMap<>();

  /**
   * First and second word to the terms that begin with them, by their places among all; those of
   * one word under "".
   */
  private final Map<String, Map<String, SortedMap<Integer, Term>>> byTwoWords = new HashMap<>();

  /** What stands behind the "no" of the values that begin with it, by its first word. */
  private final Map<String, List<Term>> denied = new HashMap<>();

  private final Set<String> little = new HashSet<>();
  private final Map<String, List<List<String>>> lists;
  private final Map<String, Set<List<String>>> listed = new HashMap<>();

  /** List to its terms of one word. */
  private final Map<String, Set<String>> listedWords = new HashMap<>();

  /** Step to its names that mean both sides. */
  private final Map<String, List<List<String>>> pairs;

  /** List and first word to the terms that begin with it. */
  private final Map<String, Map<String, List<List<String>>>> beginning = new HashMap<>();

  private final Map<String, List<List<String>>> contexts;
  private final Map<String, String> opposites;
  private final Set<String> anywhere;
  private final WordForms forms;
  private final Predicate<Sense> abnormal;
  private final Map<String, String> regions;
  private final Set<String> everyday;

  /**
   * @param terms every term of every step, and those of the cue lists
   * @param lists the lists of the section [words], whose words are known as they are
   * @param cues those of the section [cues]
   * @param contexts step to the words that must be in the sentence for its bound parts
   * @param opposites {@code step value} to the value that its denial comes to
   * @param anywhere steps whose findings can be in any place
   * @param abnormal whether a sense is a finding that is not normal
   * @param regions the region of each step
   * @param everyday words that are said every day, wherever one is
   */
  LayLexicon(
      List<Term> terms,
      Map<String, List<List<String>>> lists,
      Map<String, List<List<String>>> cues,
      Map<String, List<List<String>>> contexts,
      Map<String, String> opposites,
      Set<String> anywhere,
      Predicate<Sense> abnormal,
      Map<String, String> regions,
      Set<String> everyday) {
    this.terms = List.copyOf(terms);
    this.lists = new HashMap<>(lists);
    this.lists.putAll(cues);
    this.contexts = Map.copyOf(contexts);
    this.opposites = Map.copyOf(opposites);
    this.anywhere = Set.copyOf(anywhere);
    this.lists.forEach(
        (name, all) -> {
          listed.put(name, Set.copyOf(all));
          listedWords.put(
              name,
              all.stream()
                  .filter(words -> words.size() == 1)
                  .map(words -> words.get(0))
                  .collect(Collectors.toUnmodifiableSet()));
        });
    this.pairs =
        terms.stream()
            .filter(term -> term.sense().kind() == Sense.Kind.PART && term.sense().pair())
            .collect(
                Collectors.groupingBy(
                    term -> term.sense().step(),
                    Collectors.mapping(Term::words, Collectors.toList())));
    listed.forEach(
        (name, all) ->
            beginning.put(name, all.stream().collect(Collectors.groupingBy(term -> term.get(0)))));
    terms.forEach(
        term ->
            byFirstWord.computeIfAbsent(term.words().get(0), word -> new ArrayList<>()).add(term));
    for (int place = 0; place < terms.size(); place++) {
      List<String> words = terms.get(place).words();
      byTwoWords
          .computeIfAbsent(words.get(0), word -> new HashMap<>())
          .computeIfAbsent(words.size() == 1 ? "" : words.get(1), word -> new TreeMap<>())
          .put(place, terms.get(place));
    }
    byFirstWord.getOrDefault("no", List.of()).stream()
        .filter(term -> term.sense().kind() == Sense.Kind.VALUE && term.words().size() > 1)
        .map(term -> new Term(term.words().subList(1, term.words().size()), term.sense()))
        .forEach(
            rest ->
                denied.computeIfAbsent(rest.words().get(0), word -> new ArrayList<>()).add(rest));
    list("little").forEach(little::addAll);
    this.forms = WordForms.of(terms, lists.values(), abnormal);
    this.abnormal = abnormal;
    this.regions = Map.copyOf(regions);
    this.everyday = Set.copyOf(everyday);
  }

  boolean isAbnormal(Sense sense) {
    return abnormal.test(sense);
  }

  boolean isNormal(Sense value) {
    return !abnormal.test(value);
  }

  /** Whether all the findings that it can stand for are normal. */
  boolean isNormal(TermMatch match) {
    return match.senses().stream().noneMatch(abnormal);
  }

  /** Whether all that it can stand for are findings that are not normal. */
  boolean isAbnormal(TermMatch match) {
    return match.is(Sense.Kind.VALUE)
        && match.senses().stream()
            .filter(sense -> sense.kind() == Sense.Kind.VALUE)
            .allMatch(abnormal);
  }

  /** Whether the words hold a name of this step that means both sides: "good strong femorals". */
  boolean namesPair(String step, List<String> words) {
    return pairs.getOrDefault(step, List.of()).stream().anyMatch(pair -> contains(words, pair));
  }

  /** Whether two steps are of one region. */
  boolean near(String one, String other) {
    return regions.get(one).equals(regions.get(other));
  }

  /** Whether a structure is in the region of a step, or a place of something there. */
  boolean isNear(TermMatch part, String step) {
    return Stream.of(Sense.Kind.PLACE, Sense.Kind.PART)
        .flatMap(kind -> part.steps(kind).stream())
        .anyMatch(other -> near(other, step));
  }

  /** The words one of which must be in a sentence for this step to be spoken of. */
  List<List<String>> context(String step) {
    return contexts.getOrDefault(step, List.of());
  }

  List<Term> terms() {
    return terms;
  }

  /** Whether "present" is said of this step. */
  boolean isSeen(String step) {
    return byFirstWord.getOrDefault("present", List.of()).stream()
        .anyMatch(
            term ->
                term.words().size() == 1
                    && term.sense().kind() == Sense.Kind.VALUE
                    && step.equals(term.sense().step()));
  }

  boolean isAnywhere(String step) {
    return anywhere.contains(step);
  }

  Optional<String> opposite(String step, String value) {
    return Optional.ofNullable(opposites.get(step + " " + value));
  }

  /** Whether the sentence holds a term of this list. */
  boolean says(String list, List<String> words) {
    Map<String, List<List<String>>> terms = beginning.getOrDefault(list, Map.of());
    for (int at = 0; at < words.size(); at++) {
      for (List<String> term : terms.getOrDefault(words.get(at), List.of())) {
        int to = at + term.size();
        if (to <= words.size() && words.subList(at, to).equals(term)) {
          return true;
        }
      }
    }
    return false;
  }

  /** How many words the longest term of this list has that these words begin with; 0 for none. */
  int longest(String list, List<String> words) {
    return words.isEmpty()
        ? 0
        : beginning.getOrDefault(list, Map.of()).getOrDefault(words.get(0), List.of()).stream()
            .mapToInt(List::size)
            .filter(size -> size <= words.size())
            .filter(size -> isListed(list, words.subList(0, size)))
            .max()
            .orElse(0);
  }

  List<List<String>> list(String name) {
    return lists.getOrDefault(name, List.of());
  }

  /** Whether these words are a term of this list. */
  boolean isListed(String list, List<String> words) {
    return listed.getOrDefault(list, Set.of()).contains(words);
  }

  /** Whether a word is one of those that are said every day, wherever one is. */
  boolean isEveryday(String word) {
    return everyday.contains(word);
  }

  boolean isListed(String list, String word) {
    return listedWords.getOrDefault(list, Set.of()).contains(word);
  }

  /** Whether a step is in this list, which holds its id in words. */
  boolean isStepListed(String list, String step) {
    return isListed(list, List.of(step.split("-")));
  }

  private static boolean contains(List<String> words, List<String> term) {
    return Collections.indexOfSubList(words, term) >= 0;
  }

  boolean isLittle(String word) {
    return little.contains(word);
  }

  /** Barlow's is Barlow, but it's stays. */
  static String plain(String word) {
    return word.endsWith("'s") && !KEEP_THEIR_S.contains(word)
        ? word.substring(0, word.length() - 2)
        : word;
  }

  /** The values of a step that words such as "no grunting or flaring" deny. */
  List<String> denied(String step, List<String> words) {
    List<String> values = new ArrayList<>();
    for (int at = 1; at < words.size(); at++) {
      List<String> rest = words.subList(at, words.size());
      for (Term term : byFirstWord.getOrDefault(rest.get(0), List.of())) {
        boolean ofStep =
            term.sense().kind() == Sense.Kind.VALUE && step.equals(term.sense().step());
        if (ofStep && end(term, rest, 0) == rest.size()) {
          values.add(term.sense().value());
        }
      }
    }
    return values.stream().distinct().toList();
  }

  /** Whether the match begins with a word that denies, such as "can't feel". */
  boolean denies(TermMatch match, List<String> words) {
    return isListed("no", words.subList(match.from(), match.from() + 1))
        || match.to() - match.from() > 1
            && isListed("no", words.subList(match.from(), match.from() + 2));
  }

  /** The terms in a sentence, the longest first chosen, in the order of the words. */
  List<TermMatch> matches(List<String> words) {
    List<String> plain = words.stream().map(LayLexicon::plain).map(forms::known).toList();
    List<TermMatch> all = new ArrayList<>();
    for (int at = 0; at < plain.size(); at++) {
      Map<List<Integer>, List<Sense>> here = new LinkedHashMap<>();
      int from = at;
      for (Term term : likely(plain, at)) {
        int end = end(term, plain, at);
        if (end > 0
            && fits(term, plain)
            && !isClearOf(term, plain, end)
            && !isSideOf(term, words, at)) {
          here.computeIfAbsent(List.of(end, term.words().size()), key -> new ArrayList<>())
              .add(term.sense());
        }
      }
      if (isListed("denier", plain.get(at)) || plain.get(at).equals("no")) {
        denials(plain, at)
            .forEach(
                (term, end) ->
                    here.computeIfAbsent(List.of(end, end - from), key -> new ArrayList<>())
                        .add(term.sense()));
      }
      for (Map.Entry<List<Integer>, List<Sense>> found : here.entrySet()) {
        all.add(new TermMatch(at, found.getKey().get(0), found.getKey().get(1), found.getValue()));
      }
    }
    return longestFirst(all);
  }

  // "The right's down", "the right are together": a side, and not how far down it is.
  private boolean isSideOf(Term term, List<String> words, int at) {
    return term.sense().kind() == Sense.Kind.VALUE
        && term.words().size() > 1
        && isListed("of-one-side", term.words().get(0))
        && (words.get(at).endsWith("'s")
            || isListed("copula", words.get(at + 1))
                && !words.get(at + 1).equals(term.words().get(1)));
  }

  // The terms whose first two words may stand here, in their order: there are thousands that begin
  // with "a" or "looks".
  private Collection<Term> likely(List<String> words, int from) {
    Map<String, SortedMap<Integer, Term>> begun =
        byTwoWords.getOrDefault(words.get(from), Map.of());
    SortedMap<Integer, Term> likely = new TreeMap<>(begun.getOrDefault("", NONE));
    boolean more = true;
    for (int at = from + 1; more && at < words.size(); at++) {
      likely.putAll(begun.getOrDefault(words.get(at), NONE));
      if (isListed("owner", words.get(at))) {
        likely.putAll(begun.getOrDefault("the", NONE));
      }
      more = isLittle(words.get(at)) && at - from <= MOST_LITTLE_WORDS;
    }
    return likely.values();
  }

  // Words that are bound to a structure which nobody names give way to shorter ones: "reduced on"
  // of a reflex to "reduced" of the air entry.
  private static List<TermMatch> longestFirst(List<TermMatch> all) {
    Set<String> named = new HashSet<>();
    all.forEach(match -> named.addAll(match.steps(Sense.Kind.PART)));
    List<TermMatch> kept = new ArrayList<>();
    all.stream()
        .sorted(
            Comparator.comparing((TermMatch match) -> !isUsable(match, named))
                .thenComparing(Comparator.comparingInt(TermMatch::words).reversed())
                .thenComparingInt(match -> match.to() - match.from())
                .thenComparingInt(TermMatch::from))
        .filter(match -> kept.stream().noneMatch(match::overlaps))
        .forEach(kept::add);
    kept.sort(Comparator.comparingInt(TermMatch::from));
    return kept;
  }

  private static boolean isUsable(TermMatch match, Set<String> named) {
    return match.senses().stream()
        .anyMatch(
            sense ->
                sense.kind() != Sense.Kind.VALUE || !sense.bound() || named.contains(sense.step()));
  }

  // "Roof of his mouth" is "roof of the mouth".
  private boolean isSame(String wanted, String word) {
    return wanted.equals(word) || wanted.equals("the") && isListed("owner", word);
  }

  // The index behind the term, which may have little words inside; 0 where it does not stand here.
  private int end(Term term, List<String> words, int from) {
    int at = from + 1;
    for (int i = 1; i < term.words().size(); i++) {
      String wanted = term.words().get(i);
      int skipped = 0;
      while (at < words.size()
          && !isSame(wanted, words.get(at))
          && skipped < MOST_LITTLE_WORDS
          && term.sense().kind() != Sense.Kind.CUE
          && isLittle(words.get(at))) {
        at++;
        skipped++;
      }
      if (at >= words.size() || !isSame(wanted, words.get(at))) {
        return 0;
      }
      at++;
    }
    return at;
  }

  // What is denied by another word than "no", with words between: "can't see any rash".
  private Map<Term, Integer> denials(List<String> words, int from) {
    Map<Term, Integer> denials = new LinkedHashMap<>();
    int at = from + 1;
    boolean more = true;
    while (at < words.size() && more) {
      boolean plainNo = at == from + 1 && words.get(from).equals("no");
      for (Term term : plainNo ? List.<Term>of() : denied.getOrDefault(words.get(at), List.of())) {
        int end = end(term, words, at);
        if (end > 0) {
          denials.putIfAbsent(term, end);
        }
      }
      more = at - from <= MOST_BETWEEN_DENIAL && isListed("finding-out", words.get(at));
      at++;
    }
    return denials;
  }

  // "The chest is clear of recession" says nothing of the lungs.
  private boolean isClearOf(Term term, List<String> words, int end) {
    return term.sense().kind() == Sense.Kind.VALUE
        && end < words.size()
        && isListed("clear-of", words.subList(end - 1, end + 1));
  }

  private boolean fits(Term term, List<String> words) {
    Sense sense = term.sense();
    return sense.kind() != Sense.Kind.PART
        || !sense.bound()
        || !contexts.containsKey(sense.step())
        || contexts.get(sense.step()).stream().anyMatch(with -> contains(words, with));
  }

  /**
   * Whether somebody is spoken to there: "pink and well perfused, mum" and "mummy, the cord is
   * dry", not "his mum had".
   *
   * @param words with breaks
   */
  boolean isAddress(List<String> words, int at) {
    if (!isListed("address", List.of(words.get(at)))) {
      return false;
    }
    String before = at == 0 ? TypedText.BREAK : words.get(at - 1);
    String behind = at + 1 == words.size() ? TypedText.BREAK : words.get(at + 1);
    if (isListed("spoken-of", before)) {
      return false;
    }
    return behind.equals(TypedText.BREAK)
        || before.equals(TypedText.BREAK) && !isListed("speaks", behind);
  }
}
