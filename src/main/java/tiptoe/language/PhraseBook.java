package tiptoe.language;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Source;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * What can be said, region by region, drawn from the grammars themselves: for each value of each
 * step a few wordings, the shortest in good English first.
 */
public final class PhraseBook {
  private static final int WORDINGS = 4;
  private static final int PATHS = 20_000;

  private final Protocol protocol;
  private final Map<String, Set<String>> wordings = new LinkedHashMap<>();
  private final Map<Meaning.Instruction, Set<String>> commands = new HashMap<>();

  /**
   * Walks the grammar.
   *
   * @param network the root rule of the whole examination
   */
  public PhraseBook(PhraseNetwork network, Protocol protocol) {
    this.protocol = protocol;
    Interpreter interpreter = new Interpreter(network, protocol);
    for (PhraseNetwork.Path path : network.paths(new Random(1), PATHS)) {
      Interpretation meaning = interpreter.interpret(path.words(), Dialogue.START, Source.GRAMMAR);
      String words = String.join(" ", path.words());
      for (Finding statement : meaning.statements()) {
        note(statement, words);
      }
      meaning
          .of(Meaning.Instruction.class)
          .forEach(
              said ->
                  commands
                      .computeIfAbsent(said, key -> bestFirst())
                      .add(withoutOpener(path.words(), said, interpreter)));
      meaning
          .of(Meaning.Asks.class)
          .map(asks -> asks.question().about())
          .filter(about -> about != null)
          .forEach(about -> note(about, words));
    }
  }

  /** The region of this name, or the only one whose name begins like it. */
  public static Optional<Region> region(Protocol protocol, String name) {
    List<Region> alike =
        protocol.regions().stream()
            .filter(one -> one.id().startsWith(name.toLowerCase(Locale.ROOT)))
            .toList();
    Optional<Region> exact = protocol.region(name);
    return exact.isEmpty() && alike.size() == 1 ? Optional.of(alike.get(0)) : exact;
  }

  private void note(Finding statement, String words) {
    if (!statement.group()) {
      wordings
          .computeIfAbsent(key(statement.step(), statement.value()), key -> bestFirst())
          .add(words);
    }
  }

  // "Okay, undo"
  private static String withoutOpener(
      List<String> words, Meaning.Instruction said, Interpreter interpreter) {
    List<String> rest = words.subList(1, words.size());
    Interpretation meaning = interpreter.interpret(rest, Dialogue.START, Source.GRAMMAR);
    boolean same = meaning.meanings().equals(List.of(said)) && meaning.uncovered().isEmpty();
    return same ? withoutOpener(rest, said, interpreter) : String.join(" ", words);
  }

  private static Set<String> bestFirst() {
    return new TreeSet<>(
        Comparator.comparing((String wording) -> !Agreement.holds(wording))
            .thenComparingInt(String::length)
            .thenComparing(Comparator.naturalOrder()));
  }

  private static String key(String step, String value) {
    return step + "=" + value;
  }

  /**
   * The wordings of one value, good English before other, shortest first; of a measurement where
   * the value is null.
   */
  public List<String> wordings(Step step, String value) {
    return List.copyOf(wordings.getOrDefault(key(step.id(), value), new LinkedHashSet<>()));
  }

  /** One page for a region, as Markdown. */
  public String page(Region region) {
    StringBuilder page = new StringBuilder();
    page.append("## ").append(region.label()).append("\n\n");
    for (Step step : region.steps()) {
      page.append("**").append(step.label()).append("**");
      page.append(step.sided() ? " (each side)" : "").append(step.key() ? " — key step" : "");
      page.append('\n');
      if (step.isMeasured()) {
        page.append(line(step.measure().unit(), wordings(step, null)));
      }
      for (Value value : step.values()) {
        page.append(line(value.label(), wordings(step, value.id())));
      }
      List<String> beside = step.details().stream().map(Detail::label).toList();
      if (!beside.isEmpty()) {
        page.append("- beside it: ").append(String.join(", ", beside)).append('\n');
      }
      page.append('\n');
    }
    return page.toString();
  }

  /** The whole examination, as Markdown. */
  public String pages() {
    List<String> pages = new ArrayList<>();
    protocol.regions().forEach(region -> pages.add(page(region)));
    return "# What can be said\n\n" + String.join("", pages) + commandPage();
  }

  /** What can be said to the tool itself, as Markdown. */
  private String commandPage() {
    StringBuilder page = new StringBuilder("## To the tool\n\n");
    for (Command command : Command.values()) {
      String label = command.id().replace('-', ' ');
      Set<String> sure = commands.get(new Meaning.Instruction(command, false));
      Set<String> asked = commands.get(new Meaning.Instruction(command, true));
      page.append(line(label, List.copyOf(sure)));
      if (asked != null) {
        page.append(line(label + ", asked about first", List.copyOf(asked)));
      }
    }
    return page.append('\n').toString();
  }

  private static String line(String label, List<String> wordings) {
    List<String> few = wordings.stream().limit(WORDINGS).map(words -> "“" + words + "”").toList();
    return "- " + label + ": " + String.join(", ", few) + "\n";
  }
}
