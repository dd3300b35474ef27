package tiptoe.language;

import java.util.Map;

/**
 * "Cannae", "isnae", "dinna": verbs that deny by their ending. Not knowing one turns round what was
 * found: "I cannae hear a murmur".
 */
final class ScotsNegation {
  private static final Map<String, String> DENIED =
      Map.ofEntries(
          Map.entry("can", "can't"),
          Map.entry("do", "don't"),
          Map.entry("din", "don't"),
          Map.entry("did", "didn't"),
          Map.entry("does", "doesn't"),
          Map.entry("dis", "doesn't"),
          Map.entry("is", "isn't"),
          Map.entry("are", "aren't"),
          Map.entry("was", "wasn't"),
          Map.entry("wis", "wasn't"),
          Map.entry("were", "weren't"),
          Map.entry("has", "hasn't"),
          Map.entry("have", "haven't"),
          Map.entry("had", "hadn't"),
          Map.entry("could", "couldn't"),
          Map.entry("would", "wouldn't"),
          Map.entry("should", "shouldn't"),
          Map.entry("will", "won't"),
          Map.entry("win", "won't"),
          Map.entry("must", "mustn't"));

  private ScotsNegation() {}

  /** The word as it is said elsewhere; the word itself where it is none of these. */
  static String plain(String word) {
    int ending = word.endsWith("nae") ? 3 : word.endsWith("na") ? 2 : 0;
    return ending == 0
        ? word
        : DENIED.getOrDefault(word.substring(0, word.length() - ending), word);
  }
}
