package tiptoe.grammar;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** Whatever a grammar file holds, it is read, or what is wrong with it is said. */
class AbnfFuzz {
  @FuzzTest
  void anyTextIsReadOrRefused(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    GrammarSet set = GrammarSet.of(Map.of("a.gram", text), "a.gram");
    for (Problem problem : set.problems()) {
      if (problem.line() < 1 || problem.column() < 1 || problem.toString().contains("\n")) {
        throw new AssertionError("expected one line with its place, found " + problem);
      }
    }
    if (set.problems().isEmpty()) {
      PhraseNetwork.of(set);
    }
  }
}
