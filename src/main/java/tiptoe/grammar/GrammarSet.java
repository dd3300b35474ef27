package tiptoe.grammar;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import tiptoe.grammar.Expansion.RuleReference;

/**
 * A root grammar and every grammar it refers to, checked together. Build automata only from a set
 * whose {@link #problems} are empty.
 *
 * @param rootFile name of the file that was asked for
 * @param grammars the files by name, the root first
 * @param problems all that is wrong, at most {@value Problems#LIMIT}, in the order found
 */
public record GrammarSet(String rootFile, Map<String, Grammar> grammars, List<Problem> problems) {

  /** A rule and the file it stands in. */
  record Target(Grammar grammar, Rule rule) {
    /** Names the rule within the set. */
    String key() {
      return grammar.file() + "#" + rule.name();
    }
  }

  public GrammarSet {
    grammars = Collections.unmodifiableMap(new LinkedHashMap<>(grammars));
    problems = List.copyOf(problems);
  }

  /**
   * Reads a grammar and all it refers to.
   *
   * @param folder the grammar folder; references must stay inside it
   * @param rootFile name of the first file, relative to the folder
   */
  public static GrammarSet load(Path folder, String rootFile) {
    return load(
        rootFile,
        name -> {
          try {
            boolean inside = folder.resolve(name).normalize().startsWith(folder.normalize());
            return inside && Files.isRegularFile(folder.resolve(name))
                ? Optional.of(GrammarFile.read(folder, name))
                : Optional.empty();
          } catch (InvalidPathException e) {
            return Optional.empty();
          }
        });
  }

  /** A set from texts instead of files, by file name; the first text is the root. */
  public static GrammarSet of(Map<String, String> texts) {
    String root = texts.keySet().iterator().next();
    return load(
        root,
        name -> Optional.ofNullable(texts.get(name)).map(text -> AbnfReader.read(name, text)));
  }

  private static GrammarSet load(String rootFile, Function<String, Optional<Grammar>> reader) {
    Map<String, Grammar> grammars = new LinkedHashMap<>();
    Deque<String> waiting = new ArrayDeque<>(List.of(rootFile));
    while (!waiting.isEmpty()) {
      String name = waiting.removeFirst();
      Optional<Grammar> read = grammars.containsKey(name) ? Optional.empty() : reader.apply(name);
      read.ifPresent(
          grammar -> {
            grammars.put(name, grammar);
            references(grammar).forEach(r -> waiting.addLast(fileOf(grammar, r)));
          });
    }
    GrammarSet unchecked = new GrammarSet(rootFile, grammars, List.of());
    return new GrammarSet(rootFile, grammars, new SetChecker(unchecked).check());
  }

  private static List<RuleReference> references(Grammar grammar) {
    List<RuleReference> found = new ArrayList<>();
    grammar.rules().values().forEach(rule -> Expansions.references(rule.expansion(), found::add));
    return found;
  }

  /** The file a reference points to, relative to the folder, with forward slashes. */
  static String fileOf(Grammar grammar, RuleReference reference) {
    if (reference.uri().isEmpty()) {
      return grammar.file();
    }
    try {
      Path from = Path.of(grammar.file()).resolveSibling(grammar.header().base());
      return from.resolve(reference.uri()).normalize().toString().replace('\\', '/');
    } catch (InvalidPathException e) {
      return reference.uri();
    }
  }

  /** The rule a reference points to, if there is one. */
  Optional<Target> target(Grammar from, RuleReference reference) {
    Grammar grammar = grammars.get(fileOf(from, reference));
    if (grammar == null) {
      return Optional.empty();
    }
    String name = reference.rule().isEmpty() ? grammar.header().root() : reference.rule();
    return Optional.ofNullable(grammar.rules().get(name)).map(rule -> new Target(grammar, rule));
  }

  /** The root rule of the root file, if there is one. */
  Optional<Target> root() {
    Grammar grammar = grammars.get(rootFile);
    return grammar == null
        ? Optional.empty()
        : Optional.ofNullable(grammar.rules().get(grammar.header().root()))
            .map(rule -> new Target(grammar, rule));
  }
}
