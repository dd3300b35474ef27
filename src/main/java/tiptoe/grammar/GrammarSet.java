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

/** A root grammar and every grammar it refers to, read and checked together. */
public final class GrammarSet {

  /** A rule and the file it stands in. */
  record Target(Grammar grammar, Rule rule) {
    /** Names the rule within the set. */
    String key() {
      return grammar.file() + "#" + rule.name();
    }
  }

  private final String rootFile;
  private final Map<String, Grammar> grammars;
  private final List<Problem> problems;

  private GrammarSet(String rootFile, Function<String, Optional<Grammar>> reader) {
    this.rootFile = rootFile;
    this.grammars = Collections.unmodifiableMap(readAll(rootFile, reader));
    this.problems = new SetChecker(this).check();
  }

  /**
   * Reads a grammar and all it refers to. Bad text shows in {@link #problems}, never as an
   * exception.
   *
   * @param folder the grammar folder; references must stay inside it
   * @param rootFile name of the first file, relative to the folder
   */
  public static GrammarSet load(Path folder, String rootFile) {
    return new GrammarSet(rootFile, name -> read(folder, name));
  }

  private static Optional<Grammar> read(Path folder, String name) {
    try {
      Path path = folder.resolve(name).normalize();
      return path.startsWith(folder.normalize()) && Files.isRegularFile(path)
          ? Optional.of(GrammarFile.read(path, name))
          : Optional.empty();
    } catch (InvalidPathException e) {
      return Optional.empty();
    }
  }

  /** A set from texts instead of files, by file name. */
  public static GrammarSet of(Map<String, String> texts, String rootFile) {
    return new GrammarSet(
        rootFile,
        name -> Optional.ofNullable(texts.get(name)).map(text -> AbnfReader.read(name, text)));
  }

  private static Map<String, Grammar> readAll(
      String rootFile, Function<String, Optional<Grammar>> reader) {
    Map<String, Grammar> grammars = new LinkedHashMap<>();
    Deque<String> waiting = new ArrayDeque<>(List.of(rootFile));
    while (!waiting.isEmpty()) {
      String name = waiting.removeFirst();
      if (!grammars.containsKey(name)) {
        Optional<Grammar> read = reader.apply(name);
        read.ifPresent(grammar -> grammars.put(name, grammar));
        read.ifPresent(
            grammar -> references(grammar).forEach(r -> waiting.add(fileOf(grammar, r))));
      }
    }
    return grammars;
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
    String base = grammar.header().base();
    try {
      return Path.of(grammar.file())
          .resolveSibling(base.substring(0, base.lastIndexOf('/') + 1))
          .resolve(reference.uri())
          .normalize()
          .toString()
          .replace('\\', '/');
    } catch (InvalidPathException e) {
      return reference.uri();
    }
  }

  /** The rule a reference points to, if there is one. */
  Optional<Target> target(Grammar from, RuleReference reference) {
    Grammar grammar = grammars.get(fileOf(from, reference));
    return grammar == null
        ? Optional.empty()
        : target(grammar, reference.rule().isEmpty() ? grammar.header().root() : reference.rule());
  }

  /** The rule of that name in that file, if there is one. */
  Optional<Target> target(String file, String rule) {
    Grammar grammar = grammars.get(file);
    return grammar == null ? Optional.empty() : target(grammar, rule);
  }

  private static Optional<Target> target(Grammar grammar, String name) {
    return Optional.ofNullable(grammar.rules().get(name)).map(rule -> new Target(grammar, rule));
  }

  /** The root rule of the root file, if there is one. */
  Optional<Target> root() {
    Grammar grammar = grammars.get(rootFile);
    return grammar == null ? Optional.empty() : target(grammar, grammar.header().root());
  }

  /** Name of the file that was asked for. */
  public String rootFile() {
    return rootFile;
  }

  /** The files by name, the root first. */
  public Map<String, Grammar> grammars() {
    return grammars;
  }

  /**
   * All that is wrong, at most {@value Problems#LIMIT}; automata can be built only when there is
   * none.
   */
  public List<Problem> problems() {
    return problems;
  }
}
