package tiptoe.grammar;

import java.util.function.Consumer;
import tiptoe.grammar.Expansion.Alternatives;
import tiptoe.grammar.Expansion.Repeat;
import tiptoe.grammar.Expansion.RuleReference;
import tiptoe.grammar.Expansion.Sequence;

/** Walks over expansions. */
final class Expansions {
  private Expansions() {}

  /** Visits an expansion and all inside it, in the order of the text. */
  static void walk(Expansion expansion, Consumer<Expansion> visitor) {
    visitor.accept(expansion);
    if (expansion instanceof Sequence sequence) {
      sequence.parts().forEach(part -> walk(part, visitor));
    } else if (expansion instanceof Alternatives one) {
      one.choices().forEach(choice -> walk(choice.expansion(), visitor));
    } else if (expansion instanceof Repeat repeat) {
      walk(repeat.expansion(), visitor);
    }
  }

  static void references(Expansion expansion, Consumer<RuleReference> visitor) {
    walk(
        expansion,
        part -> {
          if (part instanceof RuleReference reference) {
            visitor.accept(reference);
          }
        });
  }
}
