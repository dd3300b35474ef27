package tiptoe.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.Map;

/** Grammars of tests, from as few words as will do. */
final class Grammars {
  static final String HEADER = "#ABNF 1.0 UTF-8;\nlanguage en-GB; root $main;\n";

  private Grammars() {}

  /** A set of one file whose rules are these; the root is {@code $main}. */
  static GrammarSet set(String rules) {
    return GrammarSet.of(Map.of("main.gram", HEADER + rules), "main.gram");
  }

  static PhraseNetwork network(String rules) {
    GrammarSet set = set(rules);
    assertEquals(List.of(), set.problems());
    return PhraseNetwork.of(set);
  }

  static List<String> words(String text) {
    return text.isBlank() ? List.of() : List.of(text.strip().split("\\s+"));
  }

  /** Whether all the words together are one phrase. */
  static boolean accepts(PhraseNetwork network, List<String> words) {
    Parse parse = network.parse(words);
    return parse.uncovered().isEmpty() && parse.phrases().size() == 1;
  }

  /** Words and {tags} of a phrase, in order. */
  static String shown(Parse.Phrase phrase, List<String> words) {
    StringBuilder shown = new StringBuilder();
    for (Parse.Item item : phrase.items()) {
      String next =
          item instanceof Parse.WordItem word
              ? words.get(word.index())
              : "{" + ((Parse.TagItem) item).text() + "}";
      shown.append(shown.length() == 0 ? "" : " ").append(next);
    }
    return shown.toString();
  }

  /** The whole parse: phrases in round brackets, uncovered runs in square ones. */
  static String shown(Parse parse, List<String> words) {
    StringBuilder shown = new StringBuilder();
    int at = 0;
    for (Parse.Phrase phrase : parse.phrases()) {
      at = gap(shown, words, at, phrase.from());
      shown.append("(").append(shown(phrase, words)).append(")");
      at = phrase.to();
    }
    gap(shown, words, at, words.size());
    return shown.toString();
  }

  private static int gap(StringBuilder shown, List<String> words, int from, int to) {
    if (from < to) {
      shown.append("[").append(String.join(" ", words.subList(from, to))).append("]");
    }
    return to;
  }
}
