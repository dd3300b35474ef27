package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import tiptoe.files.Shipped;
import tiptoe.language.Interpreter;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Protocol;

/** The words of {@code told.txt} for facts about the baby and for measurements. */
final class ToldLexicon {
  private static final String FILE = "told.txt";
  private static final Pattern LIST = Pattern.compile("<([a-z-]+)>");
  private static final Pattern OWNED = Pattern.compile("[a-z]+'(s|d|ve|re)");

  enum Kind {
    /** What is spoken of. */
    ABOUT,
    /** What is said of it. */
    VALUE,
    /** What carries nothing beside it. */
    BESIDE
  }

  /**
   * What a term can stand for.
   *
   * @param subject id of a fact or of a measured step
   * @param value id of the value; null where it is none
   * @param bound whether the subject must be named beside it
   * @param weak whether it counts only where nothing else is spoken of
   * @param alone whether it counts only where nothing else stands between two breaks
   */
  record Sense(
      Kind kind, String subject, String value, boolean bound, boolean weak, boolean alone) {}

  /** A term in a sentence, from its first word to behind its last. */
  record Match(int from, int to, List<Sense> senses) {
    Match {
      senses = List.copyOf(senses);
    }

    boolean overlaps(Match other) {
      return from < other.to && other.from < to;
    }

    List<Sense> of(Kind kind) {
      return senses.stream().filter(sense -> sense.kind() == kind).toList();
    }
  }

  private record Entry(List<String> words, String with, Sense sense) {}

  /** First and second word to the terms that begin with them; those of one word under "". */
  private final Map<String, Map<String, List<Entry>>> byTwoWords = new HashMap<>();

  private final Map<String, List<List<String>>> lists = new HashMap<>();

  /** The lists that each subject wants a word of. */
  private final Map<String, Set<String>> uses = new HashMap<>();

  private final Map<String, String> whose = new HashMap<>();
  private final Protocol protocol;
  private final Function<String, List<String>> spelling;

  /** The words as spelled, each looked up once. */
  private final Map<String, List<String>> spelled = new HashMap<>();

  private String section;

  private ToldLexicon(Protocol protocol, Function<String, List<String>> spelling) {
    this.protocol = protocol;
    this.spelling = spelling;
  }

  /**
   * The lexicon this project ships.
   *
   * @param spelling turns text into words spelled as the grammars spell them
   */
  static ToldLexicon shipped(Protocol protocol, Function<String, List<String>> spelling) {
    ToldLexicon lexicon = new ToldLexicon(protocol, spelling);
    Shipped.lines(Interpreter.class, FILE).stream()
        .map(line -> line.replaceFirst("#.*", "").strip())
        .forEach(lexicon::take);
    return lexicon;
  }

  private void take(String line) {
    if (line.startsWith("[")) {
      section = line.substring(1, line.length() - 1);
    } else if (!line.isEmpty()) {
      int colon = line.indexOf(':');
      String key = line.substring(0, colon);
      List<String> items =
          List.of(line.substring(colon + 1).split(",")).stream().map(String::strip).toList();
      if (section.equals("words")) {
        List<List<String>> all = lists.computeIfAbsent(key, name -> new ArrayList<>());
        items.stream().map(this::words).forEach(all::add);
      } else if (key.equals("whose")) {
        whose.put(section, items.get(0));
      } else if (isKnown(key)) {
        items.forEach(item -> term(key, item));
      } else {
        throw new IllegalArgumentException(
            "told.txt: expected [fact or measured step] and about, beside or a value, found "
                + line
                + " in "
                + section);
      }
    }
  }

  private boolean isKnown(String key) {
    boolean measured = protocol.find(section).filter(step -> step.isMeasured()).isPresent();
    Fact fact = protocol.fact(section).orElse(null);
    return (measured || fact != null)
        && (Set.of("about", "beside").contains(key)
            || fact != null && fact.kind() == Fact.Kind.CHOICE && fact.values().contains(key));
  }

  private void term(String key, String item) {
    if (item.startsWith("~")) {
      uses.computeIfAbsent(section, id -> new HashSet<>()).add(item.substring(1));
      list(item.substring(1))
          .forEach(
              words -> add(words, null, new Sense(Kind.ABOUT, section, null, false, true, false)));
      return;
    }
    if (item.startsWith("@")) {
      list(item.substring(1))
          .forEach(
              words ->
                  add(words, null, new Sense(Kind.BESIDE, section, null, false, false, false)));
      return;
    }
    Matcher named = LIST.matcher(item);
    if (named.find()) {
      if (!lists.containsKey(named.group(1))) {
        throw new IllegalArgumentException("told.txt: no list " + named.group(1));
      }
      list(named.group(1))
          .forEach(words -> term(key, named.replaceFirst(String.join(" ", words)).strip()));
      return;
    }
    boolean bound = item.startsWith("*");
    boolean alone = item.startsWith("=");
    String[] parts = item.substring(bound || alone ? 1 : 0).split(" & ");
    Kind kind =
        switch (key) {
          case "about" -> Kind.ABOUT;
          case "beside" -> Kind.BESIDE;
          default -> Kind.VALUE;
        };
    String value = kind == Kind.VALUE ? key : null;
    add(
        words(parts[0]),
        parts.length == 2 ? parts[1] : null,
        new Sense(kind, section, value, bound, false, alone));
  }

  private void add(List<String> words, String with, Sense sense) {
    if (with != null && !lists.containsKey(with)) {
      throw new IllegalArgumentException("told.txt: no list " + with);
    }
    if (with != null) {
      uses.computeIfAbsent(section, id -> new HashSet<>()).add(with);
    }
    byTwoWords
        .computeIfAbsent(words.get(0), word -> new HashMap<>())
        .computeIfAbsent(words.size() == 1 ? "" : words.get(1), word -> new ArrayList<>())
        .add(new Entry(words, with, sense));
  }

  private List<String> words(String text) {
    List<String> words = new ArrayList<>();
    for (String word : text.split(" ")) {
      words.addAll(
          spelled.computeIfAbsent(
              word, one -> spelling.apply(one).stream().map(ToldLexicon::plain).toList()));
    }
    return words;
  }

  /** "Baby's" is baby, "she'd" is she. */
  static String plain(String word) {
    return word.indexOf('\'') > 0 && OWNED.matcher(word).matches()
        ? word.substring(0, word.indexOf('\''))
        : word;
  }

  /** Whether it is a measured step and no fact. */
  boolean isMeasured(String subject) {
    return protocol.fact(subject).isEmpty();
  }

  /** Whether it is of the baby, so that what is told of the mother is not meant. */
  boolean isOfBaby(String subject) {
    return protocol.fact(subject).isEmpty() || "baby".equals(whose.get(subject));
  }

  /** Whether it is of the mother, of her family or of the birth as it was for her. */
  boolean isOfMother(String subject) {
    return subject.startsWith("maternal-")
        || subject.endsWith("family-history")
        || isSubjectListed("of-mother", subject);
  }

  /** Whether it may be told of anyone. */
  boolean isOfAnyone(String subject) {
    return "anyone".equals(whose.get(subject))
        || protocol.fact(subject).filter(Fact::handover).isPresent();
  }

  /** The lists of words that one of these wants beside it. */
  Set<String> uses(Set<String> subjects) {
    Set<String> all = new HashSet<>();
    subjects.forEach(subject -> all.addAll(uses.getOrDefault(subject, Set.of())));
    return all;
  }

  Set<String> contexts() {
    return uses(uses.keySet());
  }

  List<List<String>> list(String name) {
    return lists.getOrDefault(name, List.of());
  }

  boolean isListed(String list, String word) {
    return isListed(list, List.of(word));
  }

  boolean isListed(String list, List<String> words) {
    return list(list).contains(words);
  }

  /** Whether a subject is in this list, which holds its id in words. */
  boolean isSubjectListed(String list, String subject) {
    return isListed(list, List.of(subject.split("-")));
  }

  /** Whether these words begin with a term of the list. */
  boolean begins(String list, List<String> words) {
    return list(list).stream()
        .filter(term -> term.size() <= words.size())
        .anyMatch(term -> words.subList(0, term.size()).equals(term));
  }

  /** Whether these words hold a term of the list. */
  boolean says(String list, List<String> words) {
    return list(list).stream().anyMatch(term -> Collections.indexOfSubList(words, term) >= 0);
  }

  /**
   * The terms in a sentence, the longest first chosen.
   *
   * @param words plain
   */
  List<Match> matches(List<String> words) {
    return longestFirst(all(words, Kind.ABOUT, Kind.VALUE)).stream()
        .sorted(Comparator.comparingInt(Match::from))
        .toList();
  }

  /** The words that carry nothing beside one of these, by their place. */
  Set<Integer> beside(Set<String> subjects, List<String> words) {
    Set<Integer> beside = new HashSet<>();
    for (Match match : all(words, Kind.BESIDE)) {
      if (match.senses().stream().anyMatch(sense -> subjects.contains(sense.subject()))) {
        IntStream.range(match.from(), match.to()).forEach(beside::add);
      }
    }
    uses(subjects).forEach(list -> beside.addAll(of(list, words)));
    return beside;
  }

  /** Terms of more than one word that carry nothing beside one of these. */
  List<Match> phrases(Set<String> subjects, List<String> words) {
    return all(words, Kind.BESIDE).stream()
        .filter(match -> match.to() - match.from() > 1)
        .filter(match -> match.senses().stream().anyMatch(s -> subjects.contains(s.subject())))
        .toList();
  }

  /** The words that are of a list, by their place. */
  Set<Integer> of(String list, List<String> words) {
    Set<Integer> found = new HashSet<>();
    for (List<String> term : list(list)) {
      for (int at = 0; at + term.size() <= words.size(); at++) {
        if (words.subList(at, at + term.size()).equals(term)) {
          IntStream.range(at, at + term.size()).forEach(found::add);
        }
      }
    }
    return found;
  }

  private List<Match> all(List<String> words, Kind... kinds) {
    List<Match> all = new ArrayList<>();
    Set<Kind> wanted = Set.of(kinds);
    for (int at = 0; at < words.size(); at++) {
      Map<Integer, List<Sense>> here = new HashMap<>();
      Map<String, List<Entry>> begun = byTwoWords.getOrDefault(words.get(at), Map.of());
      for (String second : at + 1 < words.size() ? List.of("", words.get(at + 1)) : List.of("")) {
        for (Entry entry : begun.getOrDefault(second, List.of())) {
          int to = at + entry.words().size();
          if (wanted.contains(entry.sense().kind())
              && to <= words.size()
              && words.subList(at, to).equals(entry.words())
              && (entry.with() == null || says(entry.with(), words))) {
            here.computeIfAbsent(to, end -> new ArrayList<>()).add(entry.sense());
          }
        }
      }
      int from = at;
      here.forEach((to, senses) -> all.add(new Match(from, to, senses)));
    }
    return all;
  }

  /** The senses that the end of a match has by itself: "positive" of "a positive". */
  List<Sense> shorter(Match match, List<String> words) {
    List<Sense> senses = new ArrayList<>();
    all(words, Kind.VALUE).stream()
        .filter(other -> other.to() == match.to() && other.from() == match.from() + 1)
        .forEach(other -> senses.addAll(other.senses()));
    return senses;
  }

  private static List<Match> longestFirst(List<Match> all) {
    List<Match> kept = new ArrayList<>();
    all.stream()
        .sorted(
            Comparator.comparingInt((Match match) -> match.from() - match.to())
                .thenComparingInt(Match::from))
        .filter(match -> kept.stream().noneMatch(match::overlaps))
        .forEach(kept::add);
    return kept;
  }
}
