package tiptoe.language;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/**
 * Puts in its place what was said where a word nobody says was heard: the t of "can't" is silent
 * before "see", and "an" is heard as "and". As many words as before.
 */
final class UnsayableWord {
  private static final Set<String> FINDS = Set.of("see", "feel", "hear", "find");
  private static final Set<String> FINDS_NOT = Set.of("can't", "cannot", "couldn't", "don't");
  private static final Set<String> WHO = Set.of("i", "we");

  /** What may stand before a whole statement. */
  private static final Set<String> BEFORE = Set.of(TypedText.BREAK, "and", "but");

  private static final String VOWELS = "aeiou";

  private UnsayableWord() {}

  static List<String> mended(List<String> heard) {
    List<String> words = new ArrayList<>(heard);
    for (int at = 1; at + 2 < words.size(); at++) {
      if (!FINDS.contains(words.get(at + 1))) {
        continue;
      }
      if (words.get(at).equals("can") && words.get(at + 2).equals("any") && begins(words, at)) {
        words.set(at, "can't");
      }
      if (FINDS_NOT.contains(words.get(at)) && isArticle(words, at + 2)) {
        words.set(at + 2, "an");
      }
    }
    return List.copyOf(words);
  }

  // "If I can feel any" supposes it, "press there so I can see any" tells what something is for.
  private static boolean begins(List<String> words, int at) {
    if (!WHO.contains(words.get(at - 1))) {
      return false;
    }
    int before = at >= 2 && words.get(at - 2).equals("so") ? at - 3 : at - 2;
    return before < 0 || BEFORE.contains(words.get(before));
  }

  private static boolean isArticle(List<String> words, int at) {
    return words.get(at).equals("and")
        && at + 1 < words.size()
        && VOWELS.indexOf(words.get(at + 1).charAt(0)) >= 0;
  }
}
