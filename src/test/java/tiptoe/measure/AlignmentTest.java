package tiptoe.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked out by hand: lines are split by "/", what is said to somebody else is "()". */
class AlignmentTest {

  @ParameterizedTest(name = "{0} heard as {1}: {2}")
  @CsvSource({
    "a b / c,      a b c,    RIGHT RIGHT",
    "a b / c,      a x c,    WRONG RIGHT",
    "a b / c,      a c,      MISSED RIGHT",
    "a b / c,      a b,      RIGHT MISSED",
    "a b / c,      '',       MISSED MISSED",
    "a b / c,      x a b c,  WRONG RIGHT",
    "a b / c,      a b x c,  WRONG RIGHT",
    "a b / c,      a b c x,  RIGHT WRONG",
    "a b () / c,   a b x c,  RIGHT RIGHT",
    "a b () / c,   a x b c,  WRONG RIGHT",
    "a b / c (),   a b c x,  RIGHT RIGHT",
    "a / a / a,    a a,      RIGHT RIGHT MISSED",
    "a / '' / c,   a c,      RIGHT RIGHT RIGHT",
    "'',           '',       RIGHT",
    "'',           x,        WRONG",
  })
  void judgesLinesByTheFewestChanges(String script, String heard, String outcomes) {
    List<String> lines = Arrays.stream(script.split("/")).map(String::strip).toList();
    List<Alignment.Outcome> found =
        Alignment.judge(
            lines.stream().map(line -> things(line.replace("()", ""))).toList(),
            lines.stream().map(line -> line.endsWith("()")).toList(),
            things(heard));
    if (script.startsWith("a / a")) {
      // Which of three equal lines was left out cannot be told: one of them was.
      assertEquals(1, found.stream().filter(Alignment.Outcome.MISSED::equals).count());
    } else {
      assertEquals(outcomes, found.stream().map(Enum::name).collect(Collectors.joining(" ")));
    }
  }

  private static List<String> things(String line) {
    String plain = line.replace("''", "").strip();
    return plain.isEmpty() ? List.of() : List.of(plain.split(" +"));
  }

  @Test
  void aScriptTellsWhatIsDictatedFromWhatIsSaidToOthers() {
    Script script =
        Script.parse(
            List.of("# hips", "left barlow negative  # again", "", "(is she asleep)", "skin pink"));
    assertEquals(List.of("left barlow negative", "skin pink"), script.lines());
    assertEquals(List.of(true, false), script.chatterBehind());
  }
}
