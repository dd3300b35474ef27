package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tiptoe.grammar.Parse;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.Tag;
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
  private static final List<String> FINDINGS =
      List.of(
          "{o} the {s} {p} is {v}",
          "{o} {p} {v} on the {s}",
          "{o} {v} {p}",
          "{v} on the {s} {p}",
          "there is {d} {v} over the {s} {p}",
          "i can feel {v} in the {s} {p}",
          "{o} {s} {p} looks {d} {v} to me",
          "{p} {v} both sides",
          "his {p} is {v} today",
          "on the {s} the {p} is {v}",
          "{p} feels {v} when i press on it",
          "she has {d} {v} of the {p}",
          "{o} i would call the {p} {v}",
          "he has {v}",
          "looks like {v} on the {s}",
          "{p} appears {v} {e}");
  private static final List<String> DENIALS =
      List.of(
          "no {v} in the {p}",
          "i can't see any {v}",
          "{o} there isn't any {v} on the {s} {p}",
          "{p} without {v}",
          "i don't feel {v} over the {s} {p}",
          "the {p} has no {v} or {w}",
          "nothing like {v}",
          "neither {v} nor {w}");
  private static final List<String> TALK =
      List.of(
          "can you pass me the {p} chart please",
          "his brother had {v}",
          "mum is worried about the {p}",
          "we will look at the {p} later",
          "i need to check the {p} again tomorrow",
          "her mother's {p} was {v}",
          "maybe there is {v} i can't tell",
          "i am not sure about the {p}",
          "possible {v}",
          "what did they say about {v}",
          "let's do the {p} last",
          "if there is {v} call me",
          "the other twin had {v} of the {p}",
          "is the {p} {v}",
          "have a seat over there on the {s}",
          "all right that is fine thank you",
          "good morning how are you",
          "i will be back in a minute",
          "put it down on the left please",
          "no i have not seen her");
  private static final List<String> OPENINGS =
      List.of(
          "", "", "so", "okay", "and", "now", "right so", "well", "let me see", "um", "looks like");
  private static final List<String> DEGREES =
      List.of("", "a", "some", "a little", "slight", "mild", "a bit of", "marked");
  private static final List<String> ENDINGS = List.of("", "i think", "today", "here", "to me");
  private static final List<String> SLIPS = List.of("um", "uh", "er", "like", "you know");
  private static final List<String> MISHEARD =
      List.of("the", "a", "and", "in", "uh", "it", "of", "there", "he");

  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final Labeller labeller;
  private final Random random;

  TrainingSentences(LayLexicon lexicon, Protocol protocol, long seed) {
    this.lexicon = lexicon;
    this.protocol = protocol;
    this.labeller = new Labeller(lexicon);
    this.random = new Random(seed);
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
        into.add(stated(step, value, pick(FINDINGS)));
        if (value.norm() != Norm.NORMAL && i % 2 == 0) {
          into.add(stated(step, value, pick(DENIALS)));
        }
      }
      Tagged talk = stated(step, value, pick(TALK));
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
      words.addAll(split(pick(OPENINGS)));
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
        case "{o}" -> words.addAll(split(pick(OPENINGS)));
        case "{d}" -> words.addAll(split(pick(DEGREES)));
        case "{e}" -> words.addAll(split(pick(ENDINGS)));
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
    List<List<String>> parts =
        terms(sense -> sense.kind() == Sense.Kind.PART && sense.step().equals(step.id()));
    return parts.isEmpty() ? List.of() : pick(parts);
  }

  private List<String> value(Step step, Value value) {
    List<List<String>> values =
        terms(
            sense ->
                sense.kind() == Sense.Kind.VALUE
                    && sense.step().equals(step.id())
                    && sense.value().equals(value.id()));
    return values.isEmpty() ? List.of() : pick(values);
  }

  private List<List<String>> terms(java.util.function.Predicate<Sense> wanted) {
    return lexicon.terms().stream()
        .filter(term -> wanted.test(term.sense()))
        .map(Term::words)
        .toList();
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
        case 0 -> rough.addAll(at, split(pick(SLIPS)));
        case 1 -> rough.add(at, rough.get(at));
        case 2 -> {
          if (lexicon.isLittle(rough.get(at))) {
            rough.remove(at);
          }
        }
        default -> {
          if (lexicon.isLittle(rough.get(at))) {
            rough.set(at, pick(MISHEARD));
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
