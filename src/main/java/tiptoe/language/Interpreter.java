package tiptoe.language;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import tiptoe.finding.Command;
import tiptoe.finding.Source;
import tiptoe.grammar.Parse;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.protocol.Protocol;

/** Finds out what an utterance means: its phrases by the grammars, their meaning by their tags. */
public final class Interpreter {
  private static final Set<String> DENIED_BEFORE =
      Set.of(
          "no",
          "nothing",
          "or",
          "not",
          "without",
          "never",
          "neither",
          "denies",
          "nor",
          "isn't",
          "wasn't",
          "don't",
          "doesn't",
          "can't",
          "cannot",
          "nil",
          "negative",
          "zero");
  private static final Set<String> DENIED_BEHIND =
      Set.of("not", "absent", "none", "nil", "never", "excluded", "isn't", "wasn't");

  private static final Set<String> COPULAS = Set.of("is", "are", "was", "were");

  private final PhraseNetwork network;
  private final Protocol protocol;
  private final SecondReading second;

  /** Understands what the grammars cover and nothing else. */
  public Interpreter(PhraseNetwork network, Protocol protocol) {
    this(network, protocol, SecondReading.NONE);
  }

  /**
   * @param second reads utterances that the grammars do not cover as a whole
   */
  public Interpreter(PhraseNetwork network, Protocol protocol, SecondReading second) {
    this.network = network;
    this.protocol = protocol;
    this.second = second;
  }

  /** The phrases that it knows. */
  public PhraseNetwork phrases() {
    return network;
  }

  public Protocol protocol() {
    return protocol;
  }

  /**
   * What the words mean in this dialogue.
   *
   * @param words lower case, spelled as in the grammars; see {@link TypedText} for anything else
   * @param source {@link Source#GRAMMAR} for speech, {@link Source#TYPED} for the keyboard
   */
  public Interpretation interpret(List<String> words, Dialogue dialogue, Source source) {
    Parse parse = network.parse(words);
    UtteranceInterpreter utterance = new UtteranceInterpreter(protocol, dialogue, source);
    Set<Integer> loose = new TreeSet<>();
    List<String> left = leftOver(parse, words);
    for (Parse.Phrase phrase : parse.phrases()) {
      List<Clause> clauses = Clause.of(phrase, words);
      if (isStray(phrase, clauses, words.size(), utterance.isAsking()) || isDenied(phrase, left)) {
        IntStream.range(phrase.from(), phrase.to()).forEach(loose::add);
      } else {
        utterance.take(clauses);
      }
    }
    parse.uncovered().forEach(span -> IntStream.range(span.from(), span.to()).forEach(loose::add));
    List<String> uncovered = loose.stream().map(words::get).toList();
    if (uncovered.isEmpty() || second == SecondReading.NONE) {
      return new Interpretation(utterance.meanings(), uncovered, utterance.dialogue());
    }
    SecondReading.Reading reading = second.read(words);
    List<Meaning> meanings =
        new SecondOpinion(protocol, reading, loose).beside(utterance.meanings());
    boolean withheld =
        meanings.stream().noneMatch(Meaning.States.class::isInstance)
            && utterance.meanings().stream().anyMatch(Meaning.States.class::isInstance);
    return new Interpretation(meanings, uncovered, reading.spans(), withheld, utterance.dialogue());
  }

  // "No sign at all of milk spots" where only "milk spots" is a phrase, or "hernia absent": taking
  // the phrase without the words beside it would record the opposite of what was said.
  private static boolean isDenied(Parse.Phrase phrase, List<String> left) {
    int before = phrase.from() - 1;
    while (before >= 0
        && !left.get(before).isEmpty()
        && !DENIED_BEFORE.contains(left.get(before))) {
      before--;
    }
    int behind = phrase.to();
    if (behind < left.size() && COPULAS.contains(left.get(behind))) {
      behind++;
    }
    return before >= 0 && !left.get(before).isEmpty()
        || behind < left.size() && DENIED_BEHIND.contains(left.get(behind));
  }

  // The words with those of the phrases blanked; a bare "no" is left to what follows it.
  private static List<String> leftOver(Parse parse, List<String> words) {
    List<String> left = new ArrayList<>(words);
    for (Parse.Phrase phrase : parse.phrases()) {
      boolean bareNo = phrase.to() - phrase.from() == 1 && words.get(phrase.from()).equals("no");
      if (!bareNo) {
        left.subList(phrase.from(), phrase.to()).replaceAll(word -> "");
      }
    }
    return left;
  }

  // A bare "no" or "right" before something else is not an answer: it most likely belongs to what
  // follows, and taking the two apart would record the opposite of what was said. Nor is a bare "on
  // the left" behind something that asks nothing: it belongs to what came before.
  private static boolean isStray(
      Parse.Phrase phrase, List<Clause> clauses, int length, boolean asking) {
    boolean yesOrNo =
        clauses.stream()
            .flatMap(clause -> clause.mark("command").stream())
            .map(Command::of)
            .anyMatch(command -> command == Command.YES || command == Command.NO);
    boolean reply = clauses.stream().anyMatch(clause -> clause.mark("reply").isPresent());
    boolean alone = phrase.from() == 0 && phrase.to() == length;
    return !alone && (yesOrNo || reply && (phrase.to() != length || !asking));
  }
}
