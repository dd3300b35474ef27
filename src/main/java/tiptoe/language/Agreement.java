package tiptoe.language;

import java.util.List;
import java.util.Set;

/**
 * Whether a wording is good English in number. The grammars accept "hips is stable", since that is
 * what a hurried speaker or the recogniser may make of it; a phrase book should not teach it.
 */
final class Agreement {
  private static final Set<String> SINGULAR =
      Set.of("is", "was", "looks", "feels", "seems", "sounds", "has", "appears", "shows");
  private static final Set<String> PLURAL =
      Set.of("are", "were", "look", "feel", "seem", "sound", "have", "appear", "show");
  private static final Set<String> PLURALS_WITHOUT_S = Set.of("labia", "genitalia", "testes");
  private static final Set<String> BEFORE_A_PLAIN_VERB = Set.of("i", "can", "cannot", "to", "you");

  private Agreement() {}

  static boolean holds(String wording) {
    List<String> words = List.of(wording.split(" "));
    for (int i = 1; i < words.size(); i++) {
      String noun = words.get(i - 1);
      String verb = words.get(i);
      boolean plural = isPlural(noun) || words.subList(0, i).contains("and");
      if (plural && SINGULAR.contains(verb)
          || !plural && PLURAL.contains(verb) && !BEFORE_A_PLAIN_VERB.contains(noun)
          || isPlural(noun) && isPlural(verb) && !SINGULAR.contains(verb)) {
        return false;
      }
    }
    return true;
  }

  // "hips", not "anus", "pelvis" or "abscess".
  private static boolean isPlural(String word) {
    return PLURALS_WITHOUT_S.contains(word)
        || word.endsWith("s")
            && !word.endsWith("us")
            && !word.endsWith("is")
            && !word.endsWith("ss")
            && !SINGULAR.contains(word);
  }
}
