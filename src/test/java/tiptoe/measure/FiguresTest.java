package tiptoe.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.protocol.Side;

/** Two recordings made up by hand, with figures worked out by hand. */
class FiguresTest {
  private static final Finding LEFT = Finding.of("barlow", Side.LEFT, "negative");
  private static final Finding RIGHT = Finding.of("barlow", Side.RIGHT, "negative");
  private static final Finding POSITIVE = Finding.of("barlow", Side.RIGHT, "positive");
  private static final Finding PINK = Finding.of("skin-colour", null, "pink");

  private static TimedUtterance timed(
      String text, Outcome outcome, double end, double at, boolean last) {
    return new TimedUtterance(end - 1, end, text, outcome, "", at, last, List.of());
  }

  private static Score score(
      String name,
      List<TimedUtterance> heard,
      List<Alignment.Outcome> lines,
      Set<Finding> expected,
      Set<Finding> answers) {
    return new Score(
        Path.of("ward", name),
        Condition.CLEAN,
        null,
        90,
        9,
        heard,
        lines,
        lines,
        expected,
        answers,
        List.of());
  }

  private static Figures figures() {
    Score first =
        score(
            "a.wav",
            List.of(
                timed("left barlow negative", Outcome.ACCEPTED, 2.0, 2.6, false),
                timed("next region", Outcome.COMMAND, 5.0, 5.9, false),
                timed("", Outcome.IGNORED, 8.0, 9.0, false),
                timed("right barlow positive", Outcome.ACCEPTED, 10.0, 10.4, true)),
            List.of(Alignment.Outcome.RIGHT, Alignment.Outcome.RIGHT, Alignment.Outcome.WRONG),
            Set.of(LEFT, RIGHT),
            Set.of(LEFT, POSITIVE));
    Score second =
        score(
            "b.wav",
            List.of(timed("skin", Outcome.UNSURE, 3.0, 3.7, false)),
            List.of(Alignment.Outcome.MISSED),
            Set.of(PINK),
            Set.of());
    return Figures.of(List.of(first, second));
  }

  @Test
  void addsUpLinesAndUtterances() {
    Figures figures = figures();
    assertEquals("ward", figures.set());
    assertEquals(0.05, figures.hours(), 1e-12); // 2 × 90 s
    assertEquals(4, figures.lines());
    assertEquals(0.5, figures.ofLines(figures.understood()), 1e-12);
    assertEquals(0.25, figures.ofLines(figures.wrong()), 1e-12);
    assertEquals(0.25, figures.ofLines(figures.missed()), 1e-12);
    assertEquals(3, figures.accepted());
    assertEquals(1, figures.commands());
    assertEquals(1, figures.unsure());
    assertEquals(1, figures.ignored());
    assertEquals(0.1, figures.realTimeFactor(), 1e-12); // 18 s for 180 s
  }

  @Test
  void countsAnswersThatAreRightFalseAndMissing() {
    Figures figures = figures();
    assertEquals(3, figures.expected());
    assertEquals(1, figures.found());
    assertEquals(1, figures.falseAnswers());
    assertEquals(20, figures.perHour(figures.falseAnswers()), 1e-9); // one in 3 minutes
    assertEquals(0.5, figures.precision(), 1e-12); // 1 of the 2 that stand
    assertEquals(1 / 3.0, figures.recall(), 1e-12); // 1 of the 3 that should
    assertEquals(0.4, figures.f1(), 1e-12); // 2 · ½ · ⅓ / (½ + ⅓)
  }

  @Test
  void timesWhatAPauseEndedAndHasAPhrase() {
    Figures figures = figures();
    assertEquals(3, figures.latencies().size()); // 0.6, 0.7 and 0.9 s
    assertEquals(0.7, figures.latency(0.5), 1e-9);
    assertEquals(0.9, figures.latency(0.95), 1e-9);
  }

  @Test
  void leavesOpenWhatNothingTells() {
    Figures none = Figures.of(List.of(score("c.wav", List.of(), List.of(), Set.of(), Set.of())));
    assertTrue(Double.isNaN(none.precision()) && Double.isNaN(none.f1()));
    assertTrue(Double.isNaN(none.ofLines(none.exact())) && Double.isNaN(none.latency(0.5)));
    String row = Tables.scripted(List.of(none)).lines().skip(1).findFirst().orElseThrow();
    assertTrue(row.matches("ward +clean +1 +0( +-){7} +0 \\(0\\.0\\)"), row);
    assertTrue(MeasureJson.summary(List.of(none)).toString().contains("\"f1\":null"));
  }

  @Test
  void aBaselineNamesWhatGotWorseAndWhatIsNotThere(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("baseline.csv");
    Files.writeString(
        file,
        "ward,clean,understood,at-least,0.5 # kept\n"
            + "ward,clean,recall,at-least,0.9\n"
            + "ward,clean,false-answers,at-most,0\n"
            + "ward,5 dB,exact,at-least,0.9\n");
    assertEquals(
        List.of(
            "expected recall of ward, clean to be at least 0.9, found 0.3333",
            "expected false-answers of ward, clean to be at most 0.0, found 1.0000",
            "expected figures of ward, 5 dB, found none"),
        Baseline.read(file).problems(List.of(figures())));
  }

  @Test
  void aBaselineThatIsNotUnderstoodIsRefusedWithItsLine(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("baseline.csv");
    Files.writeString(file, "# figures\nward,clean,exact,about,0.5\n");
    var problem = assertThrows(IOException.class, () -> Baseline.read(file));
    assertEquals("baseline.csv:2: expected at-least or at-most, found about", problem.getMessage());
  }
}
