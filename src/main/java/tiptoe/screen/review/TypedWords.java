package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import tiptoe.finding.Source;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;

/**
 * What a typed line means, and how it can go on: the same phrases that can be said.
 *
 * @param network the phrases
 * @param interpreter their meaning
 * @param typed how text becomes words
 */
public record TypedWords(PhraseNetwork network, Interpreter interpreter, TypedText typed) {
  /** Words that follow without a choice are written at once, but no more than so many. */
  private static final int MOST_AT_ONCE = 4;

  Interpretation meaning(String line, Dialogue dialogue) {
    return interpreter.interpret(typed.utterance(line), dialogue, Source.TYPED);
  }

  /**
   * How the last word of the text, or a new one behind a space, can go on. Each is a word, with
   * those behind it that leave no choice.
   */
  List<String> completions(String text) {
    int space = text.lastIndexOf(' ') + 1;
    String begun = text.substring(space).toLowerCase(Locale.ROOT);
    List<String> before = typed.words(text.substring(0, space));
    PhraseNetwork.Following following = network.following(before);
    SortedSet<String> words = new TreeSet<>(following.words());
    if (following.mayEnd()) {
      words.addAll(network.firstWords());
    }
    return words.stream()
        .filter(word -> word.startsWith(begun) && !word.equals(begun))
        .map(word -> goOn(before, word))
        .toList();
  }

  private String goOn(List<String> before, String word) {
    List<String> words = new ArrayList<>(before);
    words.add(word);
    StringBuilder text = new StringBuilder(word);
    for (int more = 0; more < MOST_AT_ONCE; more++) {
      PhraseNetwork.Following following = network.following(words);
      if (following.mayEnd() || following.words().size() != 1) {
        break;
      }
      words.add(following.words().first());
      text.append(' ').append(following.words().first());
    }
    return text.toString();
  }
}
