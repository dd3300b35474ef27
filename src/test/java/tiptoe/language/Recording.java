package tiptoe.language;

import java.io.IOException;
import org.junit.jupiter.api.BeforeAll;

/** What tests of what is recorded of sentences share: the shipped grammars and tagger. */
abstract class Recording {
  static SentenceBenchmark benchmark;

  @BeforeAll
  static void train() throws IOException {
    benchmark = SentenceBenchmark.shipped();
  }
}
