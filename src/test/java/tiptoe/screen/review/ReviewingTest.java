package tiptoe.screen.review;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.input.KeyStroke;
import com.googlecode.lanterna.input.KeyType;
import com.googlecode.lanterna.screen.TerminalScreen;
import com.googlecode.lanterna.terminal.virtual.DefaultVirtualTerminal;
import java.io.IOException;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Consumer;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.Golden;
import tiptoe.clinical.Assessor;
import tiptoe.exam.Bedside;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.Outcome;
import tiptoe.grammar.GrammarSet;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;
import tiptoe.screen.Look;
import tiptoe.session.Playback;
import tiptoe.settings.Settings;

class ReviewingTest {
  private static final TypedWords WORDS = words();

  private final Bedside bed = new Bedside();
  private final List<String> sound = new ArrayList<>();

  private static TypedWords words() {
    PhraseNetwork network = PhraseNetwork.of(GrammarSet.load(Path.of("grammars"), "exam.gram"));
    try {
      return new TypedWords(
          network,
          new Interpreter(network, Protocol.standard()),
          TypedText.load(Path.of("grammars/spellings.txt")));
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private ReviewKeys reviewing() {
    ReviewService desk =
        ReviewService.editing(
            bed.exam,
            WORDS,
            record -> Assessor.standard().assess(record, Settings.DEFAULT, ZoneOffset.UTC),
            new Sealing() {
              @Override
              public List<String> problems() {
                return List.of();
              }

              @Override
              public void sign(String name, String role) {
                bed.exam.review(name).sign(role, Map.of());
              }
            });
    desk.reviewer(new Reviewer("Dr Reed", "registrar"));
    return new ReviewKeys(desk, new Sound());
  }

  private final class Sound implements Playback {
    @Override
    public void play(double from, double to, double speed, Consumer<String> trouble) {
      sound.add(from + " " + to + " " + speed);
      trouble.accept("no loudspeaker");
    }

    @Override
    public void stop() {}

    @Override
    public String export(double from, double to) {
      return "clip.wav";
    }
  }

  private static void press(ReviewKeys reviewing, String keys) {
    for (char key : keys.toCharArray()) {
      reviewing.key(
          key == '\n'
              ? new KeyStroke(KeyType.Enter)
              : key == '\t' ? new KeyStroke(KeyType.Tab) : new KeyStroke(key, false, false));
    }
  }

  private static void choose(ReviewKeys reviewing, String text) {
    for (int i = 0; i < reviewing.shown().items().size(); i++) {
      if (reviewing.shown().items().get(i).text().startsWith(text)) {
        reviewing.shown().move(-1000);
        reviewing.shown().move(i);
        return;
      }
    }
    throw new AssertionError(text + " is not among " + reviewing.shown().items());
  }

  private void examine() {
    bed.fact("sex", "girl");
    bed.find("left clavicle crepitus", "right clavicle intact");
    bed.find("left barlow negative");
    bed.find("left barlow positive");
    bed.hear("right ortolani", Outcome.UNSURE, Bedside.finding("right ortolani positive", false));
    bed.hear("nice weather", Outcome.IGNORED);
  }

  @Test
  void whatIsToDecideComesFirstThenFlagsThenTheBodyThenWhatWasNotUsed() {
    examine();
    List<Section> sections =
        reviewing().shown().items().stream().map(ReviewItem::section).distinct().toList();
    assertEquals(
        List.of(Section.DECIDE, Section.FLAGGED, Section.BABY, Section.BODY, Section.UNUSED),
        sections);
  }

  @Test
  void aTypedFindingIsRecordedInTheReviewersNameAndCanBeUndone() {
    examine();
    ReviewKeys reviewing = reviewing();
    press(reviewing, "tweight 3420 g\n");
    assertEquals("recorded weight: 3420 g", reviewing.notice());
    var said = bed.record().statements().get(bed.record().statements().size() - 1);
    assertEquals("Dr Reed", said.author());
    assertEquals("typed", said.statement().source().id());
    press(reviewing, "u");
    assertFalse(bed.answers().contains("weight"), bed.answers());
    press(reviewing, "y");
    assertTrue(bed.answers().contains("weight 3420"), bed.answers());
    assertEquals(bed.record(), ExamRecord.fold(Protocol.standard(), bed.record().entries()));
  }

  @Test
  void whatIsNotUnderstoodIsNotRecorded() {
    ReviewKeys reviewing = reviewing();
    int before = bed.record().entries().size();
    press(reviewing, "tpurple elephants\n");
    assertEquals("nothing recorded; not understood: purple elephants", reviewing.notice());
    assertEquals(before, bed.record().entries().size());
  }

  @Test
  void asksWhichSideWhenSideIsNotTyped() {
    ReviewKeys reviewing = reviewing();
    press(reviewing, "tclavicle crepitus\n");
    assertTrue(reviewing.typing().orElseThrow().prompt().contains("left, right or both?"));
    press(reviewing, "left\n");
    assertEquals("left clavicle crepitus", bed.answers());
  }

  @Test
  void tabCompletesStepsAndThenValues() {
    ReviewKeys reviewing = reviewing();
    press(reviewing, "tleft clav\t");
    assertEquals("left clavicle", reviewing.typing().orElseThrow().text());
    press(reviewing, " crep\t");
    assertTrue(
        reviewing.typing().orElseThrow().text().startsWith("left clavicle crepit"),
        reviewing.typing().orElseThrow().text());
  }

  @Test
  void changesTheSideByAKeyAndTheOriginalStaysVisible() {
    examine();
    ReviewKeys reviewing = reviewing();
    choose(reviewing, "left clavicle: crepitus");
    press(reviewing, "s");
    assertTrue(bed.answers().contains("right clavicle crepitus"), bed.answers());
    choose(reviewing, "left clavicle: crepitus (replaced)");
    assertTrue(reviewing.shown().chosen().orElseThrow().notes().toString().contains("by Dr Reed"));
  }

  @Test
  void changesAValueTakesOutAndLeavesOut() {
    examine();
    ReviewKeys reviewing = reviewing();
    choose(reviewing, "left clavicle: crepitus");
    press(reviewing, "v1");
    assertTrue(bed.answers().contains("left clavicle intact"), bed.answers());
    choose(reviewing, "right clavicle: intact");
    press(reviewing, "x\n");
    assertFalse(bed.answers().contains("right clavicle"), bed.answers());
    choose(reviewing, "right clavicle is missing");
    press(reviewing, "nasleep\n");
    assertTrue(bed.answers().contains("right clavicle not-examined reason=asleep"));
  }

  @Test
  void acceptsDismissesAndSettles() {
    examine();
    ReviewKeys reviewing = reviewing();
    choose(reviewing, "unsure: right Ortolani");
    press(reviewing, "a");
    assertTrue(bed.answers().contains("right ortolani positive"), bed.answers());
    choose(reviewing, "left Barlow: first");
    press(reviewing, "2");
    assertTrue(bed.answers().contains("left barlow positive"), bed.answers());
    choose(reviewing, "ignored:");
    press(reviewing, "d");
    assertEquals(0, bed.record().unsure().size());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void aWholeRegionFillsOnlyWhatIsOpen() {
    bed.find("left eyes discharge");
    ReviewKeys reviewing = reviewing();
    press(reviewing, "teyes normal\n");
    assertTrue(bed.answers().contains("left eyes discharge"), bed.answers());
    assertFalse(bed.answers().contains("red-reflex"), bed.answers());
  }

  @Test
  void playsHalfASecondAroundAnItemAndSaysWhenItCannot() {
    examine();
    ReviewKeys reviewing = reviewing();
    choose(reviewing, "left clavicle: crepitus");
    press(reviewing, "p");
    press(reviewing, "o");
    assertEquals(List.of("3.5 6.5 1.0", "3.5 6.5 0.7"), sound);
    reviewing.refresh();
    assertEquals("no loudspeaker", reviewing.notice());
  }

  @Test
  void signsAfterShowingWhatIsOpenAndTakesNoEditThenButAnAddendum() {
    examine();
    ReviewKeys reviewing = reviewing();
    press(reviewing, "S");
    assertTrue(reviewing.page().contains("UNSURE, NOT DECIDED: 1"), reviewing.page().toString());
    press(reviewing, "\n\n\nyes\n");
    assertEquals("signed by Dr Reed, registrar", reviewing.notice());
    int entries = bed.record().entries().size();
    press(reviewing, "tweight 3420 g\n");
    assertEquals(entries, bed.record().entries().size());
    reviewing.key(new KeyStroke(KeyType.Escape));
    press(reviewing, "Alate result\n");
    press(reviewing, "mculture sterile\n");
    press(reviewing, "S\n\n\nyes\n");
    assertEquals(2, bed.record().signatures().size());
  }

  @Test
  void aListLongerThanTheScreenIsReadToItsEndByTheArrows() throws IOException {
    examine();
    ReviewKeys reviewing = reviewing();
    press(reviewing, "S");
    String top = frame(reviewing, 80, 24);
    assertTrue(top.contains("BEFORE SIGNING"), top);
    assertTrue(top.contains("lines more, by the arrows"), top);
    String last = reviewing.page().get(reviewing.page().size() - 1).strip();
    String lastWord = last.substring(last.lastIndexOf(" ") + 1);
    for (int i = 0; i < reviewing.page().size(); i++) {
      reviewing.key(new KeyStroke(KeyType.ArrowDown));
    }
    String end = frame(reviewing, 80, 24);
    assertTrue(end.contains(lastWord) && end.contains("the end"), end);
    for (int i = 0; i < reviewing.page().size(); i++) {
      reviewing.key(new KeyStroke(KeyType.ArrowUp));
    }
    assertEquals(top, frame(reviewing, 80, 24));
  }

  @Test
  void aListIsReadToItsEndAlsoWhereItsLinesWrapAndIsScrolledBackAtOnce() throws IOException {
    examine();
    ReviewKeys reviewing = reviewing();
    press(reviewing, "S");
    String top = frame(reviewing, 40, 12);
    for (int i = 0; i < 500; i++) {
      reviewing.key(new KeyStroke(KeyType.ArrowDown));
    }
    String end = frame(reviewing, 40, 12);
    assertTrue(end.contains("the end"), end);
    reviewing.key(new KeyStroke(KeyType.ArrowUp));
    String above = frame(reviewing, 40, 12);
    assertTrue(above.contains("and 1 line more"), above);
    for (int i = 0; i < 500; i++) {
      reviewing.key(new KeyStroke(KeyType.ArrowUp));
    }
    assertEquals(top, frame(reviewing, 40, 12));
  }

  @Test
  void anotherWindowOnlyReadsAndIsToldWhy() {
    examine();
    ReviewService desk =
        ReviewService.readOnly(
            bed::record,
            "it is open in another window",
            WORDS,
            record -> Assessor.standard().assess(record, Settings.DEFAULT, ZoneOffset.UTC));
    ReviewKeys reviewing = new ReviewKeys(desk, new Sound());
    assertEquals("READ ONLY: it is open in another window", reviewing.notice());
    int entries = bed.record().entries().size();
    press(reviewing, "t");
    press(reviewing, "u");
    assertEquals(entries, bed.record().entries().size());
    assertEquals("read only: it is open in another window", reviewing.notice());
  }

  @ParameterizedTest
  @CsvSource({"80, 24", "160, 50"})
  void looksAsItDidWhenItWasLastReadByEye(int columns, int rows) throws IOException {
    examine();
    String frame = frame(reviewing(), columns, rows);
    Golden.check(
        Path.of("src/test/resources/tiptoe/screen/review/items-" + columns + "x" + rows + ".txt"),
        frame);
  }

  @Test
  void aTerminalOfAnySizeIsDrawnOnAndToldWhenItIsTooSmall() throws IOException {
    examine();
    ReviewKeys reviewing = reviewing();
    assertTrue(
        frame(reviewing, 60, 18).contains("shows all on 80 x 24 or more, has 60 x 18"), "not told");
    assertFalse(frame(reviewing, 80, 24).contains("shows all on"), "told for nothing");
    for (String keys : List.of("", "S", "xg", "1tleft cl\t")) {
      press(reviewing, keys);
      for (int columns = 1; columns < 80; columns += 3) {
        for (int rows = 1; rows < 24; rows += 2) {
          assertEquals(rows, frame(reviewing, columns, rows).lines().count());
        }
      }
    }
  }

  private static String frame(ReviewKeys reviewing, int columns, int rows) throws IOException {
    DefaultVirtualTerminal terminal = new DefaultVirtualTerminal(new TerminalSize(columns, rows));
    TerminalScreen screen = new TerminalScreen(terminal);
    screen.setCursorPosition(null);
    screen.startScreen();
    ReviewScreen.paint(screen, new Look(true, false), reviewing);
    screen.refresh();
    StringBuilder text = new StringBuilder();
    for (int row = 0; row < rows; row++) {
      StringBuilder line = new StringBuilder();
      for (int column = 0; column < columns; column++) {
        line.append(terminal.getCharacter(column, row).getCharacterString());
      }
      text.append(line.toString().stripTrailing()).append('\n');
    }
    return text.toString();
  }
}
