package tiptoe.grammar;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import tiptoe.grammar.Expansion.Garbage;
import tiptoe.grammar.Expansion.RuleReference;
import tiptoe.grammar.Expansion.TagText;
import tiptoe.grammar.GrammarSet.Target;

/** Checks what only shows when all files are there: references, recursion, reach, tags. */
final class SetChecker {
  private static final String LITERALS = "semantics/1.0-literals";

  private final GrammarSet set;
  private final Problems problems = new Problems();
  private final Set<String> done = new HashSet<>();
  private final List<String> open = new ArrayList<>();

  SetChecker(GrammarSet set) {
    this.set = set;
  }

  List<Problem> check() {
    if (set.grammars().isEmpty()) {
      problems.add(set.rootFile(), Place.START, "a grammar file in the grammar folder", "none");
      return problems.toList();
    }
    set.grammars().values().forEach(this::checkGrammar);
    if (set.grammars().get(set.rootFile()).header().root().isEmpty()) {
      problems.add(set.rootFile(), Place.START, "a root declaration", "none");
    }
    set.grammars().values().forEach(g -> g.rules().values().forEach(r -> checkRule(g, r)));
    set.grammars()
        .values()
        .forEach(g -> g.rules().values().forEach(r -> findRecursion(new Target(g, r))));
    // a rule that only a broken reference could reach is not worth a second problem
    if (problems.toList().isEmpty()) {
      checkReach();
    }
    return problems.toList();
  }

  private void checkGrammar(Grammar grammar) {
    problems.addAll(grammar.problems());
    Grammar.Header header = grammar.header();
    if (!header.root().isEmpty() && !grammar.rules().containsKey(header.root())) {
      String found = "$" + header.root();
      problems.add(grammar.file(), header.rootPlace(), "a rule of this file as root", found);
    }
    if (!header.mode().equals("voice")) {
      problems.add(grammar.file(), Place.START, "mode voice", "mode " + header.mode());
    }
  }

  private void checkRule(Grammar grammar, Rule rule) {
    Expansions.walk(
        rule.expansion(),
        part -> {
          if (part instanceof RuleReference reference) {
            checkReference(grammar, reference);
          } else if (part instanceof Garbage garbage) {
            String expectation = "words or rules, since filler is added by the decoder";
            problems.add(grammar.file(), garbage.place(), expectation, "$GARBAGE");
          } else if (part instanceof TagText tag) {
            checkTag(grammar, tag);
          }
        });
  }

  private void checkReference(Grammar from, RuleReference reference) {
    String file = GrammarSet.fileOf(from, reference);
    Grammar to = set.grammars().get(file);
    boolean foreign = !reference.uri().isEmpty();
    String expectation = null;
    String found = reference.toString();
    if (to == null) {
      expectation = "a grammar file in the grammar folder";
    } else if (reference.rule().isEmpty() && to.header().root().isEmpty()) {
      expectation = "a root declaration in " + file;
      found = "none";
    } else if (set.target(from, reference).isEmpty()) {
      expectation = foreign ? "a rule of " + file : "a rule of this file";
    } else if (foreign
        && !reference.rule().isEmpty()
        && !set.target(from, reference).get().rule().isPublic()) {
      expectation = "a public rule of " + file;
      found = "private $" + reference.rule();
    }
    if (expectation != null) {
      problems.add(from.file(), reference.place(), expectation, found);
    }
  }

  private void checkTag(Grammar grammar, TagText tag) {
    if (!grammar.header().tagFormat().equals(LITERALS)) {
      return;
    }
    Tag.firstMalformed(tag.text())
        .ifPresent(
            part ->
                problems.add(
                    grammar.file(), tag.place(), "key=value or ';' in a tag", "'" + part + "'"));
  }

  private void findRecursion(Target target) {
    if (!done.add(target.key())) {
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
    if (start < 0) {
      findRecursion(next);
      return;
    }
    StringBuilder circle = new StringBuilder();
    open.subList(start, open.size()).forEach(key -> circle.append(nameOf(key)).append(" > "));
    circle.append(nameOf(next.key()));
    problems.add(
        from.grammar().file(), reference.place(), "rules without recursion", circle.toString());
  }

  private static String nameOf(String key) {
    return "$" + key.substring(key.indexOf('#') + 1);
  }

  private void checkReach() {
    done.clear();
    set.root().ifPresent(this::findRecursion);
    set.grammars()
        .values()
        .forEach(
            grammar ->
                grammar.rules().values().stream()
                    .filter(rule -> !done.contains(new Target(grammar, rule).key()))
                    .forEach(
                        rule ->
                            problems.add(
                                grammar.file(),
                                rule.place(),
                                "a rule that the root uses",
                                "$" + rule.name())));
  }
}
