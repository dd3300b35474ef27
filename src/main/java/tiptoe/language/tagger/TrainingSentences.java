package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.files.Shipped;
import tiptoe.grammar.Parse;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.Tag;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Sentences to learn from, the same for the same grammars, protocol, lexicon and seed: paths
 * through the grammars, whose tags say what their words mean, sentences made by templates from the
 * lexicon, and talk that says nothing. Some get fillers, slips and the like of a recogniser's
 * errors.
 */
final class TrainingSentences {
  private static final int PATHS = 2500;
  private static final int EACH_VALUE = 8;
  private static final Map<String, List<String>> LISTS = read();

  private final LayLexicon lexicon;

  /** What the lexicon says of each step. */
  private final Map<String, List<Term>> terms;

  private final Protocol protocol;
  private final Labeller labeller;
  private final Random random;

  TrainingSentences(LayLexicon lexicon, Protocol protocol, long seed) {
    this.lexicon = lexicon;
    this.terms =
        lexicon.terms().stream()
            .filter(term -> term.sense().step() != null)
            .collect(Collectors.groupingBy(term -> term.sense().step()));
    this.protocol = protocol;
    this.labeller = new Labeller(lexicon);
    this.random = new Random(seed);
  }

  private static Map<String, List<String>> read() {
    Map<String, List<String>> lists = new HashMap<>();
    List<String> list = List.of();
    for (String raw : Shipped.lines(Interpreter.class, "sentences.txt")) {
      String line = raw.replaceFirst("#.*", "").strip();
      if (line.startsWith("[")) {
        list = new ArrayList<>();
        lists.put(line.substring(1, line.length() - 1), list);
      } else if (!line.isEmpty()) {
        list.add(line.equals("-") ? "" : line);
      }
    }
    return lists;
  }

  List<Tagged> all(PhraseNetwork network) {
    List<Tagged> sentences = new ArrayList<>();
    for (PhraseNetwork.Path path : network.paths(new Random(random.nextLong()), PATHS)) {
      sentences.add(tagged(roughened(path.words()), meant(path.items()), "grammar"));
    }
    protocol.steps().forEach(step -> ofStep(step, sentences));
    return sentences;
  }

  private void ofStep(Step step, List<Tagged> into) {
    if (step.isMeasured()) {
      for (int i = 0; i < 2 * EACH_VALUE; i++) {
        into.add(measured(step));
      }
      return;
    }
    for (Value value : step.values()) {
      for (int i = 0; i < EACH_VALUE; i++) {
        into.add(stated(step, value, pick(LISTS.get("findings"))));
        if (value.norm() != Norm.NORMAL && i % 2 == 0) {
          into.add(stated(step, value, pick(LISTS.get("denials"))));
        }
      }
      Tagged talk = stated(step, value, pick(LISTS.get("talk")));
      into.add(tagged(talk.words(), Set.of(), talk.template()));
    }
  }

  private Tagged measured(Step step) {
    List<String> number =
        TypedText.spoken(
            Long.toString(Math.round(Math.max(0, step.measure().min()) + random.nextInt(40))));
    List<String> words = new ArrayList<>();
    boolean first = random.nextBoolean();
    if (first) {
      words.addAll(split(pick(LISTS.get("openings"))));
      words.addAll(part(step));
      words.addAll(split(pick(List.of("is", "of", "", "was", "at", "came out at"))));
      words.addAll(number);
    } else {
      words.addAll(number);
      words.addAll(split(pick(List.of("for the", "in the", "is the"))));
      words.addAll(part(step));
    }
    return tagged(words, Set.of(step.id()), "measured");
  }

  private Tagged stated(Step step, Value value, String template) {
    Set<String> meant = new TreeSet<>(Set.of(step.id(), step.id() + " " + value.id()));
    Value other = step.values().get(random.nextInt(step.values().size()));
    List<String> words = new ArrayList<>();
    for (String piece : template.split(" ")) {
      switch (piece) {
        case "{o}" -> words.addAll(split(pick(LISTS.get("openings"))));
        case "{d}" -> words.addAll(split(pick(LISTS.get("degrees"))));
        case "{e}" -> words.addAll(split(pick(LISTS.get("endings"))));
        case "{s}" -> words.add(random.nextBoolean() ? "left" : "right");
        case "{p}" -> words.addAll(part(step));
        case "{v}" -> words.addAll(value(step, value));
        case "{w}" -> {
          words.addAll(value(step, other));
          meant.add(step.id() + " " + other.id());
        }
        default -> words.add(piece);
      }
    }
    return tagged(roughened(words), meant, template);
  }

  private List<String> part(Step step) {
    return term(step, sense -> sense.kind() == Sense.Kind.PART);
  }

  private List<String> value(Step step, Value value) {
    return term(
        step, sense -> sense.kind() == Sense.Kind.VALUE && sense.value().equals(value.id()));
  }

  private List<String> term(Step step, Predicate<Sense> wanted) {
    List<Term> fitting =
        terms.getOrDefault(step.id(), List.of()).stream()
            .filter(term -> wanted.test(term.sense()))
            .toList();
    return fitting.isEmpty() ? List.of() : pick(fitting).words();
  }

  private Tagged tagged(List<String> words, Set<String> meant, String template) {
    return new Tagged(words, labeller.labels(words, meant), template);
  }

  /** What a path of the grammar states or denies, by its tags. */
  private static Set<String> meant(List<Parse.Item> parts) {
    Set<String> meant = new LinkedHashSet<>();
    Set<String> steps = new LinkedHashSet<>();
    Stream<Tag> tags =
        parts.stream()
            .filter(Parse.TagItem.class::isInstance)
            .flatMap(item -> Tag.parse(((Parse.TagItem) item).text()).stream());
    tags.forEach(
        tag -> {
          if (tag.key().equals("step")) {
            steps.add(tag.value());
            meant.add(tag.value());
          } else if (tag.key().equals("value") || tag.key().equals("deny")) {
            steps.forEach(step -> meant.add(step + " " + tag.value()));
          }
        });
    return meant;
  }

  // A third of the sentences is said less than smoothly, or heard less than well.
  private List<String> roughened(List<String> words) {
    List<String> rough = new ArrayList<>(words);
    if (rough.size() > 1 && random.nextInt(3) == 0) {
      int at = random.nextInt(rough.size());
      switch (random.nextInt(4)) {
        case 0 -> rough.addAll(at, split(pick(LISTS.get("slips"))));
        case 1 -> rough.add(at, rough.get(at));
        case 2 -> {
          if (lexicon.isLittle(rough.get(at))) {
            rough.remove(at);
          }
        }
        default -> {
          if (lexicon.isLittle(rough.get(at))) {
            rough.set(at, pick(LISTS.get("misheard")));
          }
        }
      }
    }
    return rough;
  }

  private <T> T pick(List<T> of) {
    return of.get(random.nextInt(of.size()));
  }

  private static List<String> split(String text) {
    return text.isEmpty() ? List.of() : List.of(text.split(" "));
  }
}
