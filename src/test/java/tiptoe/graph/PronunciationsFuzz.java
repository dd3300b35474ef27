package tiptoe.graph;

import com.code_intelligence.jazzer.junit.FuzzTest;
import java.io.IOException;
import java.nio.charset.StandardCharsets;

/** Whatever a pronunciation file holds, it is read, or what is wrong with it is said. */
class PronunciationsFuzz {
  private static final Lexicon LEXICON = lexicon();

  private static Lexicon lexicon() {
    try {
      return StockModel.read().lexicon();
    } catch (IOException e) {
      throw new ExceptionInInitializerError(e);
    }
  }

  @FuzzTest
  void anyTextIsReadOrRefused(byte[] bytes) {
    String text = new String(bytes, StandardCharsets.UTF_8);
    Pronunciations read = Pronunciations.parse("words.txt", text.lines().toList(), LEXICON);
    for (String word : read.listed()) {
      if (read.of(word).size() > Pronunciations.MOST_VARIANTS) {
        throw new AssertionError("too many variants of " + word);
      }
    }
    read.problems().forEach(Object::toString);
  }
}
