package tiptoe.grammar;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import tiptoe.grammar.Expansion.Garbage;
import tiptoe.grammar.Expansion.RuleReference;
import tiptoe.grammar.Expansion.TagText;
import tiptoe.grammar.GrammarSet.Target;

/** Checks what only shows when all files are there: references, recursion, reach, tags, size. */
final class SetChecker {
  /** Deeper than any grammar a person writes, shallow enough for the stack. */
  static final int DEEPEST = 50;

  private static final String LITERALS = "semantics/1.0-literals";

  private final GrammarSet set;
  private final Problems problems = new Problems();

  /** How many rules stand inside each other below each rule that has been followed. */
  private final Map<String, Integer> heights = new HashMap<>();

  /** The rules being followed now, outermost first. */
  private final List<String> open = new ArrayList<>();

  SetChecker(GrammarSet set) {
    this.set = set;
  }

  List<Problem> check() {
    Grammar root = set.grammars().get(set.rootFile());
    if (root == null) {
      problems.add(set.rootFile(), Place.START, "a grammar file in the grammar folder", "none");
      return problems.toList();
    }
    set.grammars().values().forEach(this::checkGrammar);
    if (root.header().root().isEmpty() && root.problems().isEmpty()) {
      problems.add(set.rootFile(), Place.START, "a root declaration", "none");
    }
    forEachRule(this::checkRule);
    forEachRule(this::followReferences);
    // later checks rely on references that lead somewhere and end
    if (problems.isEmpty()) {
      checkReach();
      checkSize();
    }
    return problems.toList();
  }

  private void forEachRule(Consumer<Target> visitor) {
    for (Grammar grammar : set.grammars().values()) {
      grammar.rules().values().forEach(rule -> visitor.accept(new Target(grammar, rule)));
    }
  }

  private void checkGrammar(Grammar grammar) {
    problems.addAll(grammar.problems());
    Grammar.Header header = grammar.header();
    boolean unread = !grammar.problems().isEmpty();
    if (!unread && !header.root().isEmpty() && !grammar.rules().containsKey(header.root())) {
      String found = "$" + header.root();
      problems.add(grammar.file(), header.rootPlace(), "a rule of this file as root", found);
    }
    if (!header.mode().equals("voice")) {
      problems.add(grammar.file(), Place.START, "mode voice", "mode " + header.mode());
    }
  }

  private void checkRule(Target target) {
    Grammar grammar = target.grammar();
    Expansions.walk(
        target.rule().expansion(),
        part -> {
          if (part instanceof RuleReference reference) {
            checkReference(grammar, reference);
          } else if (part instanceof Garbage garbage) {
            String expectation = "words or rules, since filler is added by the decoder";
            problems.add(grammar.file(), garbage.place(), expectation, "$GARBAGE");
          } else if (part instanceof TagText tag && grammar.header().tagFormat().equals(LITERALS)) {
            checkLiteral(grammar, tag);
          }
        });
  }

  private void checkLiteral(Grammar grammar, TagText tag) {
    Tag.firstMalformed(tag.text())
        .ifPresent(
            part ->
                problems.add(
                    grammar.file(), tag.place(), "key=value or ';' in a tag", "'" + part + "'"));
  }

  private void checkReference(Grammar from, RuleReference reference) {
    String file = GrammarSet.fileOf(from, reference);
    Grammar to = set.grammars().get(file);
    Optional<Target> target = set.target(from, reference);
    boolean foreign = !reference.uri().isEmpty();
    boolean named = !reference.rule().isEmpty();
    if (to == null) {
      report(from, reference, "a grammar file in the grammar folder", reference.toString());
    } else if (target.isPresent()) {
      if (foreign && named && !target.get().rule().isPublic()) {
        report(from, reference, "a public rule of " + file, "private $" + reference.rule());
      }
    } else if (named && !foreign) {
      report(from, reference, "a rule of this file", reference.toString());
    } else if (named && to.problems().isEmpty()) {
      report(from, reference, "a rule of " + file, reference.toString());
    } else if (to.header().root().isEmpty() && to.problems().isEmpty()) {
      report(from, reference, "a root declaration in " + file, "none");
    }
  }

  private void report(Grammar from, RuleReference reference, String expectation, String found) {
    problems.add(from.file(), reference.place(), expectation, found);
  }

  private void followReferences(Target target) {
    if (heights.putIfAbsent(target.key(), 1) != null) {
      return;
    }
    open.add(target.key());
    Expansions.references(
        target.rule().expansion(),
        reference ->
            set.target(target.grammar(), reference)
                .ifPresent(next -> follow(target, reference, next)));
    open.remove(open.size() - 1);
  }

  private void follow(Target from, RuleReference reference, Target next) {
    int start = open.indexOf(next.key());
    if (start >= 0) {
      List<String> circle = new ArrayList<>(open.subList(start, open.size()));
      circle.add(next.key());
      String names = String.join(" > ", circle.stream().map(SetChecker::nameOf).toList());
      report(from.grammar(), reference, "rules without recursion", names);
      return;
    }
    if (open.size() < DEEPEST) {
      followReferences(next);
    }
    int height = heights.getOrDefault(next.key(), DEEPEST) + 1;
    if (height == DEEPEST + 1) {
      String expectation = "at most " + DEEPEST + " rules inside each other";
      report(from.grammar(), reference, expectation, reference.toString());
    }
    heights.merge(from.key(), height, Math::max);
  }

  private static String nameOf(String key) {
    return "$" + key.substring(key.indexOf('#') + 1);
  }

  private void checkReach() {
    heights.clear();
    set.root().ifPresent(this::followReferences);
    forEachRule(
        target -> {
          if (!heights.containsKey(target.key())) {
            Rule rule = target.rule();
            String file = target.grammar().file();
            problems.add(file, rule.place(), "a rule that the root uses", "$" + rule.name());
          }
        });
  }

  private void checkSize() {
    Target root = set.root().orElseThrow();
    long arcs = new ExpandedSize(set).arcs(root);
    if (arcs > NetworkBuilder.MOST_ARCS) {
      problems.add(
          root.grammar().file(),
          root.rule().place(),
          "at most " + NetworkBuilder.MOST_ARCS + " words and branches once rules are expanded",
          arcs == Long.MAX_VALUE ? "far more" : Long.toString(arcs));
    }
  }
}
