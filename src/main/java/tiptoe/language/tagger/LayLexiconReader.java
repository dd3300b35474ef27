package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.files.Shipped;
import tiptoe.language.Interpreter;
import tiptoe.language.NumberWords;
import tiptoe.protocol.LocalProtocol;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

/**
 * Reads {@code lay.txt}, {@code everyday.txt}, {@code cues.txt} and {@code wordings.txt}; their
 * heads explain them.
 */
final class LayLexiconReader {
  private static final List<String> HEARD = List.of("lay.txt", "everyday.txt", "cues.txt");

  /** What is only read: a decoding graph with as many ways would hear phrases less surely. */
  private static final String READ = "wordings.txt";

  private static final Set<String> COPULAS = Set.of("is", "are", "was", "were");
  private static final Set<String> CUES = Set.of("no", "turn", "both", "talk");

  private final Protocol protocol;
  private final Function<String, List<String>> spelling;

  /** The words as spelled, each looked up once: they come back in tens of thousands of terms. */
  private final Map<String, List<String>> spelled = new HashMap<>();

  private final List<Term> terms = new ArrayList<>();
  private final Map<String, List<List<String>>> lists = new HashMap<>();
  private final Map<String, List<List<String>>> cues = new HashMap<>();
  private final Map<String, List<List<String>>> contexts = new HashMap<>();
  private final Map<String, String> opposites = new HashMap<>();
  private final Set<String> anywhere = new HashSet<>();
  private final Set<String> sections = new HashSet<>();
  private String section;

  private LayLexiconReader(Protocol protocol, Function<String, List<String>> spelling) {
    this.protocol = protocol;
    this.spelling = spelling;
  }

  /**
   * The lexicon this project ships.
   *
   * @param spelling turns text, word by word, into words spelled as the grammars spell them
   */
  static LayLexicon shipped(Protocol protocol, Function<String, List<String>> spelling) {
    return new LayLexiconReader(protocol, spelling).read(text());
  }

  /** The part of it whose words are listened for. */
  static LayLexicon heard(Protocol protocol, Function<String, List<String>> spelling) {
    return new LayLexiconReader(protocol, spelling).read(heardText());
  }

  /** The files themselves, for what depends on them. */
  static List<String> text() {
    return Stream.concat(lines(READ), heardText().stream()).toList();
  }

  private static List<String> heardText() {
    return HEARD.stream().flatMap(LayLexiconReader::lines).toList();
  }

  private static Stream<String> lines(String file) {
    return Shipped.lines(Interpreter.class, file).stream();
  }

  LayLexicon read(List<String> text) {
    for (String raw : text) {
      String line = raw.replaceFirst("#.*", "").strip();
      if (!line.isEmpty() && !take(line)) {
        throw new IllegalArgumentException(
            String.join(", ", HEARD) + ", " + READ + ": expected [step] or key: terms: " + line);
      }
    }
    protocol.local().ifPresent(local -> local.wordings().forEach(this::ofWard));
    protocol.steps().filter(step -> !sections.contains(step.id())).forEach(this::byLabels);
    lists.forEach(
        (name, all) -> {
          if (CUES.contains(name)) {
            all.forEach(words -> terms.add(new Term(words, Sense.cue(name))));
          }
        });
    List.of("left", "right").forEach(side -> terms.add(new Term(List.of(side), Sense.cue(side))));
    Map<String, List<Term>> parts =
        terms.stream()
            .filter(term -> term.sense().kind() == Sense.Kind.PART)
            .collect(Collectors.groupingBy(term -> term.sense().step()));
    return new LayLexicon(
        withoutComposed().stream().map(term -> naming(term, parts)).toList(),
        lists,
        cues,
        contexts,
        opposites,
        anywhere,
        this::isAbnormal,
        protocol.steps().collect(Collectors.toMap(Step::id, Step::region)),
        WordShares.words());
  }

  private boolean isAbnormal(Sense sense) {
    return sense.kind() == Sense.Kind.VALUE
        && protocol.step(sense.step()).value(sense.value()).orElseThrow().norm() != Norm.NORMAL;
  }

  // "Hips are stable" says no more than "hips" and "stable" where nothing else of that name can be
  // stable; read by its parts it says both sides, and more can stand between and beside.
  private List<Term> withoutComposed() {
    Map<List<String>, Set<String>> parts = new HashMap<>();
    Set<String> paired = new HashSet<>();
    for (Term term : terms) {
      if (term.sense().kind() == Sense.Kind.PART && term.sense().pair()) {
        parts.computeIfAbsent(term.words(), words -> new HashSet<>()).add(term.sense().step());
        paired.add(term.sense().step());
      }
    }
    Map<List<String>, List<Sense>> values = new HashMap<>();
    for (Term term : terms) {
      if (isValueOf(paired, term)) {
        values.computeIfAbsent(term.words(), words -> new ArrayList<>()).add(term.sense());
      }
    }
    Set<List<String>> praise = new HashSet<>(lists.getOrDefault("good", List.of()));
    return terms.stream()
        .filter(term -> !isValueOf(paired, term) || !isComposed(term, parts, values, praise))
        .toList();
  }

  private static boolean isValueOf(Set<String> steps, Term term) {
    return term.sense().kind() == Sense.Kind.VALUE && steps.contains(term.sense().step());
  }

  private static boolean isComposed(
      Term term,
      Map<List<String>, Set<String>> parts,
      Map<List<String>, List<Sense>> values,
      Set<List<String>> praise) {
    List<String> words = term.words();
    for (int cut = 1; cut < words.size(); cut++) {
      List<String> first = words.subList(0, cut);
      List<String> rest = words.subList(cut, words.size());
      List<String> behind = COPULAS.contains(rest.get(0)) ? rest.subList(1, rest.size()) : rest;
      if (says(term.sense(), parts.get(first), values.get(behind)) && !isGeneral(behind, praise)
          || says(term.sense(), parts.get(rest), values.get(first)) && !isGeneral(first, praise)) {
        return true;
      }
    }
    return false;
  }

  private static boolean says(Sense meant, Set<String> steps, List<Sense> stated) {
    return steps != null
        && stated != null
        && steps.contains(meant.step())
        && stated.stream().anyMatch(value -> isSame(value, meant))
        && stated.stream().noneMatch(v -> steps.contains(v.step()) && !isSame(v, meant));
  }

  private static boolean isSame(Sense value, Sense other) {
    return value.step().equals(other.step()) && value.value().equals(other.value());
  }

  private static boolean isGeneral(List<String> words, Set<List<String>> praise) {
    return praise.contains(words) || !NumberWords.readings(words).isEmpty();
  }

  // A term that holds its structure itself, such as "no suck", needs no other word for it.
  private static Term naming(Term term, Map<String, List<Term>> parts) {
    Sense sense = term.sense();
    boolean names =
        sense.kind() == Sense.Kind.VALUE
            && sense.bound()
            && parts.getOrDefault(sense.step(), List.of()).stream()
                .anyMatch(
                    part ->
                        part.words().size() < term.words().size()
                            && Collections.indexOfSubList(term.words(), part.words()) >= 0);
    return names
        ? new Term(term.words(), new Sense(sense.kind(), sense.step(), sense.value(), false, false))
        : term;
  }

  private boolean take(String line) {
    if (line.startsWith("[")) {
      section = line.substring(1, line.length() - 1);
      sections.add(section);
      return section.equals("words")
          || section.equals("cues")
          || protocol.find(section).isPresent();
    }
    int colon = line.indexOf(':');
    if (colon < 0 || section == null) {
      return false;
    }
    String key = line.substring(0, colon).strip();
    List<String> items =
        List.of(line.substring(colon + 1).split(",")).stream()
            .map(String::strip)
            .filter(item -> !item.isEmpty())
            .flatMap(item -> spelledOut(item).stream())
            .toList();
    if (section.equals("words") || section.equals("cues")) {
      (section.equals("words") ? lists : cues)
          .computeIfAbsent(key, list -> new ArrayList<>())
          .addAll(items.stream().map(this::words).toList());
      return true;
    }
    return step(protocol.step(section), key, items);
  }

  /** "Turns/moves well/all+round" is each of the four; an empty alternative is left out. */
  static List<String> spelledOut(String item) {
    if (!item.contains("/")) {
      return List.of(item);
    }
    String mark = item.startsWith("*") ? "*" : "";
    List<String> all = List.of("");
    for (String word : item.substring(mark.length()).split(" ")) {
      List<String> longer = new ArrayList<>();
      for (String begun : all) {
        for (String alternative : word.split("/", -1)) {
          longer.add((begun + " " + alternative.replace('+', ' ')).strip());
        }
      }
      all = longer;
    }
    return all.stream().filter(one -> !one.isEmpty()).map(one -> mark + one).toList();
  }

  private boolean step(Step step, String key, List<String> items) {
    switch (key) {
      case "part" -> items.forEach(item -> part(step, item, false));
      case "loosely" -> items.forEach(item -> add(item, Sense.loosely(step.id())));
      case "pair" -> items.forEach(item -> part(step, item, true));
      case "place" -> items.forEach(item -> place(step, item));
      case "with" -> contexts.put(step.id(), items.stream().map(this::words).toList());
      default -> {
        if (key.startsWith("denied ")) {
          opposites.put(step.id() + " " + key.substring("denied ".length()), items.get(0));
        } else if (step.value(key).isPresent()) {
          items.forEach(item -> value(step, key, item));
        } else {
          return false;
        }
      }
    }
    return true;
  }

  // The words of a ward for a value of its own step need the step beside them, as in its grammar.
  private void ofWard(LocalProtocol.Wording wording) {
    Step step = protocol.step(wording.step());
    boolean added = Protocol.standard().find(step.id()).isEmpty();
    if (wording.value() == null) {
      part(step, wording.words(), false);
    } else {
      value(step, wording.value(), (added ? "*" : "") + wording.words());
    }
    sections.add(step.id());
  }

  // Without words of its own a step is called by its labels.
  private void byLabels(Step step) {
    part(step, step.label(), false);
    step.values().forEach(value -> value(step, value.id(), "*" + value.label()));
  }

  private void part(Step step, String item, boolean pair) {
    boolean bound = item.startsWith("*");
    String text = bound ? item.substring(1) : item;
    add(text, new Sense(Sense.Kind.PART, step.id(), null, pair, bound));
  }

  private void place(Step step, String item) {
    if (item.equals("any")) {
      anywhere.add(step.id());
    } else {
      add(item, new Sense(Sense.Kind.PLACE, step.id(), null, false, false));
    }
  }

  private void value(Step step, String value, String item) {
    boolean bound = item.startsWith("*");
    String text = bound ? item.substring(1) : item;
    Sense sense = new Sense(Sense.Kind.VALUE, step.id(), value, false, bound);
    if (text.startsWith("@")) {
      Sense always = new Sense(Sense.Kind.VALUE, step.id(), value, false, true);
      lists.get(text.substring(1)).forEach(words -> terms.add(new Term(words, always)));
    } else {
      add(text, sense);
    }
  }

  private void add(String text, Sense sense) {
    terms.add(new Term(words(text).stream().map(LayLexicon::plain).toList(), sense));
  }

  private List<String> words(String text) {
    List<String> words = new ArrayList<>();
    for (String word : text.split(" ")) {
      words.addAll(spelled.computeIfAbsent(word, spelling));
    }
    return words;
  }
}
