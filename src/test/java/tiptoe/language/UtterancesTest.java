package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertAll;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.function.Executable;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tiptoe.finding.Source;
import tiptoe.protocol.Protocol;

/**
 * What people say and what it must mean, region by region. The tables were written by hand from how
 * the examination is dictated: common practice, no published source.
 */
class UtterancesTest {
  private static final Path TABLES = Path.of("src/test/resources/tiptoe/language/utterances");
  private static Interpreter interpreter;
  private static TypedText typed;

  @BeforeAll
  static void loadGrammars() throws IOException {
    interpreter = new Interpreter(Shipped.network(), Protocol.standard());
    typed = Shipped.typed();
  }

  static Stream<Path> tables() throws IOException {
    try (Stream<Path> files = Files.list(TABLES)) {
      return files.filter(file -> file.toString().endsWith(".txt")).sorted().toList().stream();
    }
  }

  @ParameterizedTest
  @MethodSource("tables")
  void meansWhatTheTableSays(Path table) throws IOException {
    List<Executable> rows = new ArrayList<>();
    int number = 0;
    for (String line : Files.readAllLines(table)) {
      number++;
      if (!line.isBlank() && !line.startsWith("#")) {
        String[] sides = line.split("=>");
        String where = table.getFileName() + ":" + number + " " + sides[0].strip();
        rows.add(() -> assertEquals(sides[1].strip(), meaningOf(sides[0]), where));
      }
    }
    assertTrue(!rows.isEmpty(), "expected rows in " + table);
    assertAll(rows);
  }

  private static String meaningOf(String utterances) {
    Dialogue dialogue = Dialogue.START;
    List<String> items = new ArrayList<>();
    for (String utterance : utterances.split(" / ")) {
      Interpretation interpretation =
          interpreter.interpret(typed.words(utterance), dialogue, Source.GRAMMAR);
      dialogue = interpretation.dialogue();
      String item = Notation.of(interpretation);
      if (!item.equals("-")) {
        items.add(item);
      }
    }
    return items.isEmpty() ? "-" : String.join("; ", items);
  }
}
