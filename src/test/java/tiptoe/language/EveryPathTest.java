package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import tiptoe.TestExtent;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Source;
import tiptoe.grammar.Parse;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.grammar.Tag;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** Walks every arc of the grammars: whatever can be said means something the protocol knows. */
class EveryPathTest {
  private static final Set<String> MARKS =
      Set.of(
          "step",
          "side",
          "value",
          "deny",
          "number",
          "of",
          "unit",
          "fact",
          "is",
          "group",
          "every",
          "here",
          "bound",
          "pick",
          "nth",
          "short",
          "heading",
          "command",
          "ask",
          "same",
          "correction",
          "reply",
          "reason",
          "either",
          "assumed",
          "amend");
  private static final Protocol PROTOCOL = Protocol.standard();
  private static PhraseNetwork network;
  private static Interpreter interpreter;
  private static List<PhraseNetwork.Path> paths;

  /** What each of the paths means, in their order. */
  private static List<Interpretation> meanings;

  @BeforeAll
  static void walk() {
    network = Shipped.network();
    interpreter = new Interpreter(network, PROTOCOL);
    // One walk takes every arc; several take more of the ways they combine.
    paths =
        IntStream.range(0, TestExtent.of(1, 6))
            .boxed()
            .flatMap(seed -> network.paths(new Random(seed), 100_000).stream())
            .toList();
    meanings = paths.stream().map(path -> meaning(path.words())).toList();
  }

  private static Interpretation meaning(List<String> words) {
    return interpreter.interpret(words, Dialogue.START, Source.GRAMMAR);
  }

  @Test
  void everyTagNamesSomethingThatExists() {
    Set<String> wrong = new TreeSet<>();
    for (PhraseNetwork.Path path : paths) {
      List<String> steps = new ArrayList<>();
      List<Tag> tags =
          path.items().stream()
              .filter(Parse.TagItem.class::isInstance)
              .flatMap(item -> Tag.parse(((Parse.TagItem) item).text()).stream())
              .toList();
      tags.stream()
          .filter(tag -> tag.key().equals("step") || tag.key().equals("either"))
          .forEach(tag -> steps.add(tag.value()));
      boolean isShort = tags.stream().anyMatch(tag -> tag.key().equals("short"));
      for (Tag tag : tags) {
        if (!isShort && !exists(tag, steps)) {
          wrong.add(tag + " in " + String.join(" ", path.words()));
        }
      }
    }
    assertEquals(Set.of(), wrong);
  }

  private static boolean exists(Tag tag, List<String> steps) {
    return switch (tag.key()) {
      case "step" -> PROTOCOL.find(tag.value()).isPresent();
      case "value", "deny" ->
          tag.value().equals(Value.NOT_EXAMINED)
              || steps.stream().anyMatch(id -> PROTOCOL.step(id).value(tag.value()).isPresent());
      case "group", "every", "heading" -> PROTOCOL.region(tag.value()).isPresent();
      case "side" -> List.of("left", "right", "both").contains(tag.value());
      case "fact" -> PROTOCOL.fact(tag.value()).isPresent();
      case "command" -> Command.of(tag.value()) != null;
      default -> {
        if (MARKS.contains(tag.key()) || tag.endsClause()) {
          yield true;
        }
        yield PROTOCOL
            .steps()
            .flatMap(step -> step.details().stream())
            .filter(detail -> detail.id().equals(tag.key()))
            .anyMatch(detail -> takes(detail, tag.value()));
      }
    };
  }

  private static boolean takes(Detail detail, String value) {
    return detail.values().contains(value)
        || detail.measure() != null && detail.measure().plausible(Double.parseDouble(value));
  }

  @Test
  void everyChoiceOfAFactThatIsSpokenCanBeSaidAndNoOther() {
    Set<String> said = new TreeSet<>();
    for (int i = 0; i < paths.size(); i++) {
      List<String> words = paths.get(i).words();
      for (Meaning meaning : meanings.get(i).meanings()) {
        if (meaning instanceof Meaning.Fact fact) {
          assertEquals(
              Optional.empty(), PROTOCOL.problem(fact.id(), fact.value()), words::toString);
          said.add(fact.id() + "=" + fact.value());
        }
      }
    }
    Set<String> never = new TreeSet<>();
    PROTOCOL
        .facts()
        .filter(fact -> said.stream().anyMatch(one -> one.startsWith(fact.id() + "=")))
        .forEach(fact -> fact.values().forEach(value -> never.add(fact.id() + "=" + value)));
    never.removeAll(said);
    assertEquals(Set.of("breech-in-last-month=no", "co-twin-breech=no"), never);
  }

  @Test
  void everyFindingThatCanBeSaidIsUnderstood() {
    Set<String> silent = new TreeSet<>();
    for (int i = 0; i < paths.size(); i++) {
      PhraseNetwork.Path path = paths.get(i);
      Interpretation meaning = meanings.get(i);
      assertEquals(List.of(), meaning.uncovered());
      boolean onlyInContext =
          path.items().stream()
              .filter(Parse.TagItem.class::isInstance)
              .anyMatch(
                  item ->
                      ((Parse.TagItem) item)
                          .text()
                          .matches(".*(short|reply|same|fact|here|pick|amend)=.*"));
      if (!onlyInContext && meaning.meanings().isEmpty()) {
        silent.add(String.join(" ", path.words()));
      }
      for (Finding statement : meaning.statements()) {
        checkAgainstProtocol(statement, path.words());
      }
    }
    // A size without its number, or a fact without one, says nothing yet.
    silent.removeIf(words -> words.matches(".*(measures|measuring).*"));
    assertEquals(Set.of(), silent);
  }

  private static void checkAgainstProtocol(Finding statement, List<String> words) {
    Step step = PROTOCOL.step(statement.step());
    assertTrue(step.sided() == (statement.side() != null) || !step.sided(), words::toString);
    assertTrue(
        statement.quantity() != null
            || statement.value().equals(Value.NOT_EXAMINED)
            || step.value(statement.value()).isPresent(),
        words::toString);
  }

  @Test
  void everyValueOfEveryStepCanBeSaid() {
    Set<String> said = new HashSet<>();
    for (int i = 0; i < paths.size(); i++) {
      List<String> mirrored = mirrored(paths.get(i).words());
      Interpretation same = meanings.get(i);
      for (Interpretation meaning :
          mirrored.equals(paths.get(i).words())
              ? List.of(same)
              : List.of(same, meaning(mirrored))) {
        meaning.statements().stream().filter(s -> !s.group()).forEach(s -> note(s, said));
        meaning.questions().stream()
            .filter(question -> question.about() != null)
            .forEach(question -> note(question.about(), said));
      }
    }
    Set<String> never = new TreeSet<>();
    PROTOCOL.steps().forEach(step -> needed(step).forEach(never::add));
    never.removeAll(said);
    assertEquals(Set.of(), never);
  }

  private static List<String> mirrored(List<String> words) {
    return words.stream()
        .map(word -> word.equals("left") ? "right" : word.equals("right") ? "left" : word)
        .toList();
  }

  private static void note(Finding statement, Set<String> said) {
    String what = statement.value() == null ? "number" : statement.value();
    said.add(statement.step() + " " + what);
    if (statement.side() != null) {
      said.add(statement.step() + "." + statement.side().id() + " " + what);
    }
  }

  private static List<String> needed(Step step) {
    if (step.isMeasured()) {
      return List.of(step.id() + " number");
    }
    List<String> needed = new ArrayList<>();
    for (Value value : step.values()) {
      if (step.sided()) {
        needed.add(step.id() + "." + Side.LEFT.id() + " " + value.id());
        needed.add(step.id() + "." + Side.RIGHT.id() + " " + value.id());
      } else {
        needed.add(step.id() + " " + value.id());
      }
    }
    assertTrue(step.values().stream().anyMatch(value -> value.norm() == Norm.NORMAL));
    return needed;
  }
}
