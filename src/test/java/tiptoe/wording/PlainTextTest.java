package tiptoe.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.function.Consumer;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PlainTextTest {
  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "Baby Rowan, 3.2 kg, 37°C – “well” | Baby Rowan, 3.2 kg, 37°C – “well”",
        "Zoë Ñandú 李明 | Zoë Ñandú 李明",
        "a\\u000Ab | a b",
        "a\\u000D\\u000Ab | a  b",
        "a\\u0009b | a b",
        "a\\u0085b | a b",
        "a\\u2028b\\u2029c | a b c",
        "a\\u001B[2Jb | a\\uFFFD[2Jb",
        "a\\u009B2Jb | a\\uFFFD2Jb",
        "a\\u0007\\u0000\\u007Fb | a\\uFFFD\\uFFFD\\uFFFDb",
        "a\\u202Eb\\u2066c\\u061Cd | a\\uFFFDb\\uFFFDc\\uFFFDd",
        "a\\u200Bb\\uFEFFc\\u200Dd\\u00ADe | abcde",
        "a\\u3164b\\uFE0Fc\\u2800d | abcd",
        "a\\uDB40\\uDC41b | ab",
        "a\\uD800b | a\\uFFFDb",
        "a\\uE000b\\uFFFEc | a\\uFFFDb\\uFFFDc",
      })
  void showsOneLineOfWhatCanBeSeen(String text, String shown) {
    assertEquals(unescaped(shown), PlainText.line(unescaped(text)));
  }

  @Test
  void keepsTheLineFeedsThatWereMeant() {
    assertEquals("a\nb\nc\uFFFD", PlainText.lines("a\nb\r\nc\u001B"));
  }

  @Property
  void nothingThatMovesTurnsOrHidesIsLeft(@ForAll("texts") String text) {
    String line = PlainText.line(text);
    assertTrue(line.codePoints().noneMatch(PlainTextTest::isBad), line);
    assertEquals(line, PlainText.line(line));
  }

  @Property
  void whatIsPlainStaysAsItIs(@ForAll("letters") String text) {
    assertEquals(text, PlainText.line(text));
    assertEquals(text, PlainText.lines(text));
    assertEquals(text, PlainText.json(text));
  }

  @Property
  void jsonSaysTheSame(@ForAll("texts") String text) throws Exception {
    ObjectMapper mapper = new ObjectMapper();
    String json = PlainText.json(mapper.writeValueAsString(text));
    assertTrue(json.codePoints().noneMatch(PlainTextTest::isBad), json);
    assertEquals(text, mapper.readValue(json, String.class));
  }

  @Test
  void aStreamCleansHoweverItIsPrintedTo() {
    String bad = "x\u001B[2J\r\033[Ky";
    String good = "x\uFFFD[2J \uFFFD[Ky";
    assertEquals(good, printed(to -> to.print(bad)));
    assertEquals(good, printed(to -> to.append(bad)));
    assertEquals(good, printed(to -> to.print(bad.toCharArray())));
    assertEquals(good, printed(to -> to.print((Object) bad)));
    assertEquals("1 " + good, printed(to -> to.printf("%d %s", 1, bad)));
    assertEquals("1 \uFFFD[K", printed(to -> to.printf("%d%s", 1, "\r\033[K")));
    assertEquals(good + System.lineSeparator(), printed(to -> to.println(bad)));
    assertEquals("\uFFFD", printed(to -> to.print('\u001B')));
  }

  @Test
  void aLineMayBeDrawnAnew() {
    assertEquals("\r\033[Khalf", printed(to -> to.print("\r\033[Khalf")));
    assertEquals("\r[##..]", printed(to -> to.printf("\r[%s]", "##..")));
  }

  private static String printed(Consumer<PrintStream> printing) {
    ByteArrayOutputStream bytes = new ByteArrayOutputStream();
    PrintStream to = PlainText.stream(new PrintStream(bytes, true, StandardCharsets.UTF_8));
    printing.accept(to);
    to.flush();
    return bytes.toString(StandardCharsets.UTF_8);
  }

  private static boolean isBad(int sign) {
    return switch (Character.getType(sign)) {
      case Character.CONTROL,
          Character.FORMAT,
          Character.LINE_SEPARATOR,
          Character.PARAGRAPH_SEPARATOR,
          Character.SURROGATE ->
          true;
      default -> sign == 0x3164 || sign == 0x115F || sign >= 0xFE00 && sign <= 0xFE0F;
    };
  }

  @Provide
  Arbitrary<String> texts() {
    return Arbitraries.oneOf(
            Arbitraries.chars().all(),
            Arbitraries.chars().range('\0', '\u00A0'),
            Arbitraries.chars().range('\u2000', '\u206F'))
        .list()
        .ofMaxSize(40)
        .map(
            signs -> {
              StringBuilder text = new StringBuilder();
              signs.forEach(text::append);
              return text.toString();
            })
        // Half a pair is no text that JSON could hold in UTF-8.
        .filter(text -> text.codePoints().noneMatch(sign -> sign >= 0xD800 && sign <= 0xDFFF));
  }

  @Provide
  Arbitrary<String> letters() {
    return Arbitraries.strings().withCharRange(' ', '~').withCharRange('À', 'ÿ').ofMaxLength(60);
  }

  private static String unescaped(String text) {
    return org.apache.commons.text.StringEscapeUtils.unescapeJava(text.strip());
  }
}
