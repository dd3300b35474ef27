package tiptoe.screen;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import tiptoe.Golden;
import tiptoe.exam.ExamRecord;
import tiptoe.protocol.Caution;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/** Whole frames against golden files, which were read by eye when they were made. */
class FramesTest {
  private static final Path GOLDEN = Path.of("src/test/resources/tiptoe/screen");
  private static final Look LOOK = new Look(true, false);

  private static Scene scene(String name) {
    return new Scene().say(said(name));
  }

  private static String said(String name) {
    String baby = "baby girl. thirty nine weeks and four days. twenty six hours old. ";
    return switch (name) {
      case "question" -> baby + "clavicle crepitus.";
      case "findings" ->
          baby
              + "weight three thousand four hundred and twenty grams."
              + "left clavicle crepitus. now the hips. barlow negative both hips."
              + "?right ortolani positive. left ortolani negative.";
      case "offer-before-question" ->
          baby + "left clavicle intact. clavicle crepitus. ?right femoral pulse weak.";
      case "contradiction" -> "left barlow negative. left barlow positive.";
      case "paused" -> "palate intact. pause the recording.";
      case "read-out" -> said("unsure") + "?no murmur.";
      case "unsure-ending" -> said("unsure") + "end of examination.";
      case "unsure" ->
          "skin pink. ?palate intact. ?left clavicle crepitus. ?right femoral pulse weak."
              + "?good suck.";
      case "ending" -> "skin pink. end of examination.";
      case "summary" -> baby + "left clavicle crepitus. end of examination. end of examination.";
      default -> throw new IllegalArgumentException(name);
    };
  }

  private static void check(String file, String frame) throws IOException {
    Golden.check(GOLDEN.resolve(file + ".txt"), frame);
  }

  @ParameterizedTest
  @CsvSource({
    "question, 80, 24",
    "question, 160, 50",
    "findings, 80, 24",
    "findings, 160, 50",
    "findings, 100, 30",
    "findings, 250, 70",
    "findings, 120, 40",
    "findings, 200, 50",
    "findings, 60, 15",
    "offer-before-question, 80, 24",
    "offer-before-question, 120, 40",
    "contradiction, 80, 24",
    "paused, 80, 24",
    "ending, 80, 24",
    "ending, 160, 50",
    "read-out, 80, 24",
    "read-out, 120, 40",
    "read-out, 200, 50",
    "read-out, 60, 15",
    "unsure-ending, 80, 24",
    "unsure-ending, 160, 50",
    "summary, 80, 24",
  })
  void looksAsItDidWhenItWasLastReadByEye(String name, int columns, int rows) throws IOException {
    check(name + "-" + columns + "x" + rows, scene(name).frame(columns, rows));
  }

  @Test
  void theFirstFrameCarriesTheCautionAndSaysWhatItWaitsFor() throws IOException {
    String frame =
        new Scene()
            .frame(
                80,
                24,
                LOOK,
                state -> state.withListening(false).withNotice("getting ready to listen"));
    check("first-80x24", frame);
    String words = frame.replaceAll("[│\\s]+", " ");
    for (String word : Caution.TEXT.split(" ")) {
      assertTrue(words.contains(word), word);
    }
    assertTrue(frame.contains("getting ready to listen"), frame);
    assertTrue(frame.contains("NOT LISTENING YET"), frame);
  }

  @Test
  void aResultOfFourPartsShowsFourRightBeforeLeft() throws IOException {
    String frame =
        new Scene()
            .say(
                "left barlow positive right barlow negative right ortolani positive left ortolani"
                    + " negative.")
            .frame(80, 24);
    List<String> recorded =
        frame
            .lines()
            .filter(line -> line.contains("RECORDED"))
            .map(line -> line.replaceFirst(".*RECORDED ", "").strip())
            .toList();
    assertEquals(
        List.of(
            "right Barlow: negative",
            "left Barlow: positive",
            "right Ortolani: positive",
            "left Ortolani: negative"),
        recorded,
        frame);
    String same = new Scene().say("barlow negative both hips.").frame(80, 24);
    assertTrue(same.contains("RECORDED Barlow (both sides): negative"), same);
  }

  @Test
  void aPlainTerminalGetsAsciiOnly() throws IOException {
    String frame = scene("findings").frame(80, 24, new Look(false, true), state -> state);
    check("findings-ascii-80x24", frame);
    assertTrue(frame.chars().allMatch(sign -> sign == '\n' || sign >= ' ' && sign <= '~'), frame);
  }

  @Test
  void theScreenIsInTheChosenUnitsAndSpelling() throws IOException {
    Scene scene =
        new Scene(
            Settings.DEFAULT
                .with(Setting.WEIGHT_UNIT, "lb")
                .with(Setting.LENGTH_UNIT, "in")
                .with(Setting.TEMPERATURE_UNIT, "fahrenheit")
                .with(Setting.SPELLING, "american"));
    scene.say(
        "baby girl thirty nine weeks and four days. age twelve hours. weight three thousand four"
            + " hundred and twenty");
    String measured =
        scene.say("length fifty one. temperature thirty six point eight").frame(250, 70);
    assertTrue(measured.contains("3420 g (7 lb 9 oz)"), measured);
    assertTrue(measured.contains("70th percentile"), measured);
    assertTrue(measured.contains("51 cm (20.1 in)"), measured);
    String heard =
        scene
            .state()
            .wording()
            .words()
            .of(scene.exam.record().answers("temperature").get(0).finding());
    assertEquals("temperature: 36.8 °C (98.2 °F)", heard);
    String head = scene.say("anterior fontanelle bulging").frame(250, 70);
    assertTrue(head.contains("anterior fontanel "), head);
    assertTrue(head.contains("\"anterior fontanelle bulging\""), head);
  }

  @Test
  void coloursChangeNoCharacter() throws IOException {
    Scene scene = scene("findings");
    assertEquals(scene.frame(80, 24, new Look(false, false), state -> state), scene.frame(80, 24));
  }

  @ParameterizedTest
  @EnumSource(Voice.class)
  void whatTheHelpLineOffersIsUnderstood(Voice voice) {
    assertEquals(List.of(voice.command()), Scene.commands(voice.words()));
  }

  @ParameterizedTest
  @CsvSource({"1, 1", "10, 3", "20, 8", "40, 12", "59, 15", "80, 24", "132, 43", "400, 120"})
  void anySizeCanBeDrawn(int columns, int rows) throws IOException {
    for (String name : new String[] {"question", "findings", "ending", "summary"}) {
      String frame = scene(name).frame(columns, rows);
      assertEquals(rows, frame.lines().count());
      assertEquals(columns < 10, frame.isBlank(), frame);
    }
  }

  @Test
  void whatIsUnsureIsToldFromWhatIsRecordedByWords() throws IOException {
    Scene scene = new Scene().say("now the hips. ?left barlow positive.");
    String frame = scene.frame(80, 24);
    assertTrue(frame.contains("UNSURE, NOT RECORDED"), frame);
    assertFalse(frame.contains("✓ RECORDED"), frame);
    String wider = scene.frame(100, 30);
    assertTrue(wider.contains("? (positive) unsure"), wider);
  }

  @Test
  void troubleWithTheSoundIsTold() throws IOException {
    String frame =
        new Scene().frame(80, 24, LOOK, state -> state.withTrouble("NO SOUND: unplugged"));
    assertTrue(frame.contains("! NO SOUND: unplugged"), frame);
  }

  @Test
  void thatNothingIsHeardWhileAVoiceSpeaksIsTold() throws IOException {
    String frame = new Scene().frame(80, 24, LOOK, state -> state.withSpeaking(true));
    assertTrue(frame.contains("SPEAKING: NOTHING IS HEARD"), frame);
    assertFalse(frame.contains("LISTENING"), frame);
  }

  @Test
  void anAnsweredCommandIsNotSaidToHaveChangedNothing() throws IOException {
    Scene scene = new Scene().say("left clavicle crepitus. read that back.");
    String list = "left clavicle: crepitus; ".repeat(20);
    String frame = scene.frame(60, 15, LOOK, state -> state.withNotice(list));
    assertTrue(frame.contains("ANSWERED"), frame);
    assertFalse(frame.contains("NOTHING CHANGED"), frame);
  }

  @Test
  void everyFlagIsReadInFullInTurns() throws IOException {
    Scene scene =
        scene("findings").say("left femoral pulse absent. umbilical skin red. murmur grade three.");
    StringBuilder read = new StringBuilder();
    for (int second = 0; second < 60; second += Pages.SECONDS) {
      int now = second;
      String frame = scene.frame(80, 24, LOOK, state -> state.withSound(3, now));
      frame
          .lines()
          .skip(1)
          .map(line -> line.contains("│") ? line.substring(line.indexOf('│') + 1) : line)
          .forEach(line -> read.append(line.strip()).append(' '));
    }
    String all = read.toString().replaceAll(" +", " ");
    scene
        .state()
        .wording()
        .assessment()
        .flags()
        .forEach(flag -> assertTrue(all.contains(flag.advice()), flag.advice() + "\n" + all));
    assertTrue(scene.frame(80, 24).lines().findFirst().orElseThrow().contains("URGENT"));
  }

  @Test
  void allKeysAreOfferedInTurns() throws IOException {
    StringBuilder read = new StringBuilder();
    for (int second = 0; second < 60; second += Pages.SECONDS) {
      int now = second;
      read.append(new Scene().frame(80, 24, LOOK, state -> state.withSound(3, now)));
    }
    Voice.useful(new Scene().state().record())
        .forEach(voice -> assertTrue(read.indexOf(voice.offer()) >= 0, voice.offer()));
  }

  @ParameterizedTest
  @CsvSource({
    "clavicle crepitus, 3",
    "left barlow negative. left barlow positive, 2",
    "murmur present, 10",
    "murmur grade two at the apex, 4",
  })
  void eachKeyThatAnswersAQuestionHasWordsThatCloseIt(String said, int keys) {
    assertEquals(keys, AnswerKey.now(new Scene().say(said).state().record()).size(), said);
    for (int i = 0; i < keys; i++) {
      Scene scene = new Scene().say(said);
      int open = scene.state().record().openQuestion().orElseThrow().number();
      String words = AnswerKey.now(scene.state().record()).get(i).words();
      ExamRecord after = scene.say(words).state().record();
      assertTrue(after.openQuestions().stream().noneMatch(one -> one.number() == open), words);
    }
  }

  @Test
  void aLongSummaryIsReadInFullInTurns() throws IOException {
    Scene scene = new Scene();
    for (String side : List.of("left", "right")) {
      scene.say(side + " clavicle crepitus. now the hips. ?" + side + " barlow positive.");
      scene.say("?" + side + " ortolani positive. " + side + " femoral pulse absent.");
      scene.say("?" + side + " clavicle intact. " + side + " red reflex absent.");
    }
    scene.say("umbilical skin red. murmur grade three. end of examination. end of examination.");
    StringBuilder read = new StringBuilder();
    for (int second = 0; second < 60; second += Pages.SECONDS) {
      int now = second;
      String frame = scene.frame(80, 24, LOOK, state -> state.withSound(0, now));
      assertTrue(frame.contains(" RECORD examinations/e1"), frame);
      frame.lines().forEach(line -> read.append(line.strip()).append(' '));
    }
    String all = read.toString().replaceAll(" +", " ");
    assertTrue(all.contains("page 1 of 2"), all);
    ScreenState state = scene.state();
    for (String line : Summary.of(state.wording(), state.folder())) {
      assertTrue(all.contains(line.strip().replaceAll(" +", " ")), line + "\n" + all);
    }
  }

  @Test
  void theHelpNamesEveryKeyAndSign() throws IOException {
    String frame =
        new Scene().frame(160, 50, LOOK, state -> state.withShowing(ScreenState.Showing.HELP));
    check("help-160x50", frame);
    for (Voice voice : Voice.values()) {
      assertTrue(frame.contains(voice.offer()), voice.offer());
    }
  }

  @Test
  void aSmallTerminalIsToldWhatItLacks() throws IOException {
    String frame = scene("question").frame(60, 18);
    assertTrue(frame.contains("shows all on 80 x 24 or more, has 60 x 18"), frame);
    assertTrue(frame.contains("left, right or"), frame);
  }

  @Test
  void aLongAnswerIsGivenRoomInTurns() throws IOException {
    String words = "missing: skin; ".repeat(40) + "missing: last";
    StringBuilder read = new StringBuilder();
    for (int second = 0; second < 60; second += Pages.SECONDS) {
      int now = second;
      read.append(
          new Scene().frame(80, 24, LOOK, state -> state.withNotice(words).withSound(3, now)));
    }
    assertTrue(read.indexOf("missing: last") > 0, read.toString());
  }

  @Test
  void controlCharactersOfALabelDoNoHarm() throws IOException {
    Scene scene = new Scene();
    scene.exam.context("label", "bed\u001b[2J\t4", null);
    assertTrue(scene.frame(80, 24).contains("bed?[2J 4"), scene.frame(80, 24));
  }
}
