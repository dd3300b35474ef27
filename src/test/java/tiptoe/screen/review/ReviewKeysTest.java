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
import tiptoe.exam.Answer;
import tiptoe.exam.Bedside;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Signer;
import tiptoe.finding.Command;
import tiptoe.finding.Outcome;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Interpreter;
import tiptoe.language.Meaning;
import tiptoe.language.Shipped;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.screen.Look;
import tiptoe.session.Playback;
import tiptoe.settings.Settings;
import tiptoe.wording.RecordWording;

class ReviewKeysTest {
  private static final TypedWords WORDS = words();

  private final Bedside bed = new Bedside();
  private final List<String> sound = new ArrayList<>();

  private static TypedWords words() {
    PhraseNetwork network = Shipped.network();
    try {
      return new TypedWords(
          network, new Interpreter(network, Protocol.standard()), Shipped.typed());
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }

  private static RecordWording wording(ExamRecord record) {
    return new RecordWording(
        record,
        Assessor.of(Protocol.standard()).assess(record, Settings.DEFAULT, ZoneOffset.UTC),
        Settings.DEFAULT);
  }

  private ReviewKeys review() {
    ReviewService service =
        ReviewService.editing(
            bed.exam,
            WORDS,
            ReviewKeysTest::wording,
            new ReviewService.Sealing() {
              @Override
              public List<String> problems() {
                return List.of();
              }

              @Override
              public List<String> alterations() {
                return List.of();
              }

              @Override
              public void sign(String name, String role) {
                bed.exam.review(name).sign(role, Map.of(), Signer.NAME_ONLY);
              }
            });
    service.reviewer(new Reviewer("Dr Reed", "registrar"));
    return new ReviewKeys(service, new Sound());
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

  private static List<String> page(ReviewKeys review) {
    return review.dialogue().overlay().page().orElseThrow().lines();
  }

  private static void press(ReviewKeys review, String keys) {
    for (char key : keys.toCharArray()) {
      review.key(
          key == '\n'
              ? new KeyStroke(KeyType.Enter)
              : key == '\t' ? new KeyStroke(KeyType.Tab) : new KeyStroke(key, false, false));
    }
  }

  private static void choose(ReviewKeys review, String text) {
    for (int i = 0; i < review.dialogue().shown().items().size(); i++) {
      if (review.dialogue().shown().items().get(i).text().startsWith(text)) {
        review.dialogue().shown().move(-1000);
        review.dialogue().shown().move(i);
        return;
      }
    }
    throw new AssertionError(text + " is not among " + review.dialogue().shown().items());
  }

  private void examine() {
    bed.fact("sex", "girl");
    bed.find("clavicle.left crepitus", "clavicle.right intact");
    bed.find("barlow.left negative");
    bed.find("barlow.left positive");
    bed.hear("right ortolani", Outcome.UNSURE, Bedside.finding("ortolani.right positive", false));
    bed.hear("nice weather", Outcome.IGNORED);
  }

  @Test
  void whatIsToDecideComesFirstThenFlagsThenTheBodyThenWhatWasNotUsed() {
    examine();
    List<Section> sections =
        review().dialogue().shown().items().stream().map(ReviewItem::section).distinct().toList();
    assertEquals(
        List.of(Section.DECIDE, Section.FLAGGED, Section.BABY, Section.BODY, Section.UNUSED),
        sections);
  }

  @Test
  void headingsTalkAndCommandsStayWhatTheyWere() {
    examine();
    bed.hear("yes", Outcome.IGNORED);
    bed.say("moving on to the hips", new Meaning.Heading("hips"));
    bed.hear("show-help", Outcome.COMMAND, new Meaning.Instruction(Command.SHOW_HELP));
    ReviewKeys review = review();
    int before = bed.record().entries().size();
    for (String item : List.of("ignored: \"yes\"", "accepted: \"moving", "command: \"show-help")) {
      choose(review, item);
      press(review, "e");
      assertTrue(review.dialogue().overlay().typing().isEmpty(), item);
      assertEquals(ReviewService.NO_FINDING, review.dialogue().notice());
      int said = review.dialogue().shown().chosen().orElseThrow().number();
      assertTrue(
          review
              .dialogue()
              .service()
              .typeFor(said, "left barlow negative", "hips", null)
              .refused());
    }
    choose(review, "ignored: \"nice weather\"");
    press(review, "e");
    assertTrue(review.dialogue().overlay().typing().isPresent(), "it may have been a finding");
    assertEquals(before, bed.record().entries().size());
  }

  @Test
  void aTypedFindingIsRecordedInTheReviewersNameAndCanBeUndone() {
    examine();
    ReviewKeys review = review();
    press(review, "tweight 3420 g\n");
    assertEquals("recorded weight: 3420 g", review.dialogue().notice());
    var said = bed.record().statements().get(bed.record().statements().size() - 1);
    assertEquals("Dr Reed", said.author());
    assertEquals("typed", said.statement().source().id());
    press(review, "u");
    assertFalse(bed.answers().contains("weight"), bed.answers());
    press(review, "y");
    assertTrue(bed.answers().contains("weight 3420 g"), bed.answers());
    assertEquals(bed.record(), ExamRecord.fold(Protocol.standard(), bed.record().entries()));
  }

  @Test
  void whatIsNotUnderstoodIsNotRecorded() throws IOException {
    ReviewKeys review = review();
    int before = bed.record().entries().size();
    press(review, "tpurple elephants\n");
    String why = "nothing recorded; not understood: purple elephants";
    assertEquals(why, review.dialogue().notice());
    assertTrue(frame(review, 80, 24).contains(why), "told while the line can be mended");
    press(review, "s");
    assertFalse(frame(review, 80, 24).contains(why), frame(review, 80, 24));
    assertEquals(before, bed.record().entries().size());
  }

  @Test
  void asksWhichSideWhenSideIsNotTyped() {
    ReviewKeys review = review();
    press(review, "tclavicle crepitus\n");
    assertTrue(
        review
            .dialogue()
            .overlay()
            .typing()
            .orElseThrow()
            .prompt()
            .contains("left, right or both?"));
    press(review, "left\n");
    assertEquals("clavicle.left crepitus [typed]", bed.answers());
  }

  @Test
  void tabCompletesStepsAndThenValues() {
    ReviewKeys review = review();
    press(review, "tleft clav\t");
    assertEquals("left clavicle", review.dialogue().overlay().typing().orElseThrow().text());
    press(review, " crep\t");
    assertTrue(
        review
            .dialogue()
            .overlay()
            .typing()
            .orElseThrow()
            .text()
            .startsWith("left clavicle crepit"),
        review.dialogue().overlay().typing().orElseThrow().text());
  }

  @Test
  void changesTheSideByAKeyAndTheOriginalStaysVisible() {
    examine();
    ReviewKeys review = review();
    choose(review, "left clavicle: crepitus");
    press(review, "s");
    assertTrue(bed.answers().contains("clavicle.right crepitus"), bed.answers());
    choose(review, "left clavicle: crepitus (replaced)");
    assertTrue(
        review.dialogue().shown().chosen().orElseThrow().notes().toString().contains("by Dr Reed"));
  }

  @Test
  void changesAValueTakesOutAndLeavesOut() {
    examine();
    ReviewKeys review = review();
    choose(review, "left clavicle: crepitus");
    press(review, "v1");
    assertTrue(bed.answers().contains("clavicle.left intact"), bed.answers());
    choose(review, "right clavicle: intact");
    press(review, "x\n");
    assertFalse(bed.answers().contains("clavicle.right"), bed.answers());
    choose(review, "right clavicle: missing");
    press(review, "nasleep\n");
    assertTrue(bed.answers().contains("clavicle.right not-examined reason=asleep"));
  }

  @Test
  void acceptsDismissesAndSettles() {
    examine();
    ReviewKeys review = review();
    choose(review, "unsure: right Ortolani");
    press(review, "a");
    assertTrue(bed.answers().contains("ortolani.right positive"), bed.answers());
    choose(review, "left Barlow: first");
    press(review, "2");
    assertTrue(bed.answers().contains("barlow.left positive"), bed.answers());
    List<Answer> settled =
        bed.record().answers().stream()
            .filter(answer -> answer.step().equals("barlow") && answer.side() == Side.LEFT)
            .toList();
    assertEquals("Dr Reed", wording(bed.record()).reviewer(settled), "told in every report");
    choose(review, "ignored:");
    press(review, "d");
    assertEquals(0, bed.record().unsure().size());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void acceptsPartsOneByOneAndGoesOnWithWhatIsNext() {
    bed.hear(
        "hips",
        Outcome.UNSURE,
        Bedside.finding("barlow.left negative", false),
        Bedside.finding("ortolani.left positive", false),
        Bedside.finding("knee-height equal", false));
    bed.hear("good tone", Outcome.UNSURE, Bedside.finding("tone normal", false));
    bed.hear("good moro", Outcome.UNSURE, Bedside.finding("moro symmetric", false));
    ReviewKeys review = review();
    choose(review, "unsure: left Barlow");
    press(review, "a");
    review.key(new KeyStroke(KeyType.ArrowDown));
    review.key(new KeyStroke(KeyType.Enter));
    review.key(new KeyStroke(KeyType.Enter));
    review.key(new KeyStroke(KeyType.ArrowDown));
    review.key(new KeyStroke(KeyType.Enter));
    review.key(new KeyStroke(KeyType.Enter));
    assertTrue(bed.answers().contains("barlow.left negative"), bed.answers());
    assertTrue(bed.answers().contains("knee-height equal"), bed.answers());
    assertFalse(bed.answers().contains("ortolani"), bed.answers());
    assertEquals("unsure: tone: normal", review.dialogue().shown().chosen().orElseThrow().text());
    press(review, "d");
    assertEquals(
        "unsure: Moro: symmetric", review.dialogue().shown().chosen().orElseThrow().text());
  }

  @Test
  void aWholeRegionFillsOnlyWhatIsOpen() {
    bed.find("eyes.left discharge");
    ReviewKeys review = review();
    press(review, "teyes normal\n");
    assertTrue(bed.answers().contains("eyes.left discharge"), bed.answers());
    assertFalse(bed.answers().contains("red-reflex"), bed.answers());
  }

  @Test
  void playsHalfASecondAroundAnItemAndSaysWhenItCannot() {
    examine();
    ReviewKeys review = review();
    choose(review, "left clavicle: crepitus");
    press(review, "p");
    press(review, "o");
    assertEquals(List.of("3.5 6.5 1.0", "3.5 6.5 0.7"), sound);
    review.refresh();
    assertEquals("no loudspeaker", review.dialogue().notice());
  }

  @Test
  void signsAfterShowingWhatIsOpenAndTakesNoEditThenButAnAddendum() {
    examine();
    ReviewKeys review = review();
    press(review, "S");
    assertTrue(page(review).contains("UNSURE, NOT DECIDED: 1"), page(review).toString());
    press(review, "\n\n\nparents left\nyes\n");
    assertEquals(
        "closed by “Dr Reed”, “registrar” (a name, not a signature)", review.dialogue().notice());
    int entries = bed.record().entries().size();
    press(review, "tweight 3420 g\n");
    assertEquals(entries, bed.record().entries().size());
    review.key(new KeyStroke(KeyType.Escape));
    press(review, "Alate result\n");
    press(review, "mculture sterile\n");
    press(review, "S\n\n\nstill open\nyes\n");
    assertEquals(2, bed.record().signatures().size());
  }

  @Test
  void aListLongerThanTheScreenIsReadToItsEndByTheArrows() throws IOException {
    examine();
    ReviewKeys review = review();
    press(review, "S");
    String top = frame(review, 80, 24);
    assertTrue(top.contains("BEFORE SIGNING"), top);
    assertTrue(top.contains("lines more, by the arrows"), top);
    String last = page(review).get(page(review).size() - 1).strip();
    String lastWord = last.substring(last.lastIndexOf(" ") + 1);
    for (int i = 0; i < page(review).size(); i++) {
      review.key(new KeyStroke(KeyType.ArrowDown));
    }
    String end = frame(review, 80, 24);
    assertTrue(end.contains(lastWord) && end.contains("the end"), end);
    for (int i = 0; i < page(review).size(); i++) {
      review.key(new KeyStroke(KeyType.ArrowUp));
    }
    assertEquals(top, frame(review, 80, 24));
  }

  @Test
  void aListIsReadToItsEndAlsoWhereItsLinesWrapAndIsScrolledBackAtOnce() throws IOException {
    examine();
    ReviewKeys review = review();
    press(review, "S");
    String top = frame(review, 40, 12);
    for (int i = 0; i < 500; i++) {
      review.key(new KeyStroke(KeyType.ArrowDown));
    }
    String end = frame(review, 40, 12);
    assertTrue(end.contains("the end"), end);
    review.key(new KeyStroke(KeyType.ArrowUp));
    String above = frame(review, 40, 12);
    assertTrue(above.contains("and 1 line more"), above);
    for (int i = 0; i < 500; i++) {
      review.key(new KeyStroke(KeyType.ArrowUp));
    }
    assertEquals(top, frame(review, 40, 12));
  }

  @Test
  void anotherWindowOnlyReadsAndIsToldWhy() {
    examine();
    ReviewService service =
        ReviewService.readOnly(
            bed::record, "it is open in another window", WORDS, ReviewKeysTest::wording);
    ReviewKeys review = new ReviewKeys(service, new Sound());
    assertEquals("READ ONLY: it is open in another window", review.dialogue().notice());
    int entries = bed.record().entries().size();
    press(review, "t");
    press(review, "u");
    assertEquals(entries, bed.record().entries().size());
    assertEquals("read only: it is open in another window", review.dialogue().notice());
  }

  @ParameterizedTest
  @CsvSource({"80, 24", "160, 50"})
  void looksAsItDidWhenItWasLastReadByEye(int columns, int rows) throws IOException {
    examine();
    String frame = frame(review(), columns, rows);
    Golden.check(
        Path.of("src/test/resources/tiptoe/screen/review/items-" + columns + "x" + rows + ".txt"),
        frame);
  }

  @Test
  void aTerminalOfAnySizeIsDrawnOnAndToldWhenItIsTooSmall() throws IOException {
    examine();
    ReviewKeys review = review();
    assertTrue(
        frame(review, 60, 18).contains("shows all on 80 x 24 or more, has 60 x 18"), "not told");
    assertFalse(frame(review, 80, 24).contains("shows all on"), "told for nothing");
    for (String keys : List.of("", "S", "xg", "1tleft cl\t")) {
      press(review, keys);
      for (int columns = 1; columns < 80; columns += 3) {
        for (int rows = 1; rows < 24; rows += 2) {
          assertEquals(rows, frame(review, columns, rows).lines().count());
        }
      }
    }
  }

  private static String frame(ReviewKeys review, int columns, int rows) throws IOException {
    DefaultVirtualTerminal terminal = new DefaultVirtualTerminal(new TerminalSize(columns, rows));
    TerminalScreen screen = new TerminalScreen(terminal);
    screen.setCursorPosition(null);
    screen.startScreen();
    ReviewScreen.paint(screen, new Look(true, false), review);
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

  @Test
  void whatMattersIsSettledOrNamedBeforeASignature() throws IOException {
    bed.find("red-reflex.left present");
    bed.find("red-reflex.left absent");
    ReviewKeys review = review();
    assertEquals(2, review.dialogue().service().unsettled().size());
    Reply refused = review.dialogue().service().sign("Dr Reed", "registrar", "");
    assertTrue(refused.refused(), refused.text());
    assertEquals(List.of(), bed.record().signatures());
    assertFalse(review.dialogue().service().sign("Dr Reed", "registrar", "parents left").refused());
    assertEquals("signed while not settled: parents left", bed.record().remarks().get(0).text());
  }

  @Test
  void whatWasSettledIsNotNamed() throws IOException {
    bed.find("red-reflex.left present");
    bed.find("red-reflex.left absent");
    ReviewKeys review = review();
    review.dialogue().service().settle(bed.record().openQuestion().orElseThrow().number(), false);
    assertEquals(List.of(), review.dialogue().service().unsettled());
    review.dialogue().service().sign("Dr Reed", "registrar", "");
    assertEquals(List.of(), bed.record().remarks());
  }
}
