package tiptoe.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Assessor;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.Heard;
import tiptoe.exam.Review;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.MemorySink;
import tiptoe.finding.Source;
import tiptoe.language.Interpretation;
import tiptoe.language.Interpreter;
import tiptoe.language.Shipped;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.wording.QuestionWording;
import tiptoe.wording.RecordWording;

/** Records for the tests of reports: invented babies, made by dictating to the real stages. */
final class Records {
  static final Instant NOON = Instant.parse("2026-03-02T12:00:00Z");
  private static final String ROLE = "consultant paediatrician";
  private static final Interpreter INTERPRETER;
  private static final TypedText TYPED;

  static {
    try {
      INTERPRETER = new Interpreter(Shipped.network(), Protocol.standard());
      TYPED = Shipped.typed();
    } catch (IOException e) {
      throw new ExceptionInInitializerError(e);
    }
  }

  private Records() {}

  /** The record of an examination in which these lines were dictated. */
  static ExamRecord of(String... lines) {
    return dictated(Stream.of(lines).toList()).record();
  }

  static Examination dictated(List<String> lines) {
    Examination examination =
        Examination.open(
            Protocol.standard(),
            Clock.fixed(NOON, ZoneOffset.UTC),
            new MemorySink(),
            QuestionWording::of,
            new Event.ExaminationOpened("test-1", "Baby Wren", "1", "0.1.0", "Dr Ada Quill", null));
    dictate(examination, lines);
    return examination;
  }

  private static void dictate(Examination examination, List<String> lines) {
    double at = 0;
    for (String line : lines) {
      Interpretation meaning =
          INTERPRETER.interpret(TYPED.words(line), examination.dialogue(), Source.GRAMMAR);
      examination.hear(Heard.typed(line, at++), meaning);
    }
  }

  static ExamRecord typical() {
    return of(
        "baby girl thirty nine weeks and four days born breech by caesarean first baby",
        "twenty six hours old",
        "weight three thousand four hundred and twenty grams",
        "length fifty one centimetres",
        "head circumference thirty four point five",
        "temperature thirty six point eight",
        "heart rate one forty two",
        "respiratory rate forty eight",
        "sats right hand ninety eight",
        "sats foot ninety seven",
        "apgars nine and ten",
        "skin pink",
        "milia on the nose",
        "anterior fontanelle open soft and flat two by three centimetres",
        "no caput no cephalohaematoma",
        "red reflex present and symmetric",
        "palate intact",
        "yes felt",
        "left clavicle crepitus right fine",
        "grade two systolic murmur at the left sternal edge radiating to the back",
        "femoral pulses strong and equal",
        "eyes normal",
        "no hepatosplenomegaly",
        "left barlow negative right positive",
        "ortolani negative on the left",
        "sacral dimple base visible",
        "moro not examined later");
  }

  /**
   * The examination of the demonstration as its script has it, without the talk in parentheses:
   * what {@code demo} comes to when every word is heard, so that it does not vary with the hearing.
   */
  static Examination demonstration() {
    Examination examination =
        Examination.open(
            Protocol.standard(),
            Clock.fixed(NOON, ZoneOffset.UTC),
            new MemorySink(),
            QuestionWording::of,
            new Event.ExaminationOpened(
                "demonstration", "Baby Wren", "1", "0.1.0", "Dr Ada Quill", null));
    dictate(examination, script());
    return examination;
  }

  /** The same, signed by the reviewer. */
  static ExamRecord signed() {
    Examination examination = demonstration();
    examination.review("Dr Bea Marlow").sign(ROLE, Map.of(), Signer.NAME_ONLY);
    return examination.record();
  }

  /** The same, with an addendum that was signed too. */
  static ExamRecord amended() {
    Examination examination = demonstration();
    Review review = examination.review("Dr Bea Marlow");
    review.sign(ROLE, Map.of(), Signer.NAME_ONLY);
    review.startAddendum("the murmur had gone the next day");
    review.remark("no murmur at 48 hours");
    review.sign(ROLE, Map.of(), Signer.NAME_ONLY);
    return examination.record();
  }

  private static List<String> script() {
    try (Stream<Path> files = Files.list(Path.of("demo-audio"))) {
      List<String> lines = new ArrayList<>();
      for (Path part : files.filter(Records::isPart).sorted().toList()) {
        Files.readAllLines(part).stream()
            .filter(line -> !line.isBlank() && !line.startsWith("("))
            .forEach(lines::add);
      }
      return lines;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean isPart(Path file) {
    return file.getFileName().toString().matches("\\d\\d-.*\\.txt");
  }

  static ExamRecord empty() {
    return ExamRecord.empty(Protocol.standard());
  }

  /** All that can be chosen of units and spelling, chosen otherwise than it is kept. */
  static final Settings AMERICAN =
      Settings.DEFAULT
          .with(Setting.WEIGHT_UNIT, "lb")
          .with(Setting.LENGTH_UNIT, "in")
          .with(Setting.TEMPERATURE_UNIT, "fahrenheit")
          .with(Setting.SPELLING, "american");

  static RecordWording wording(ExamRecord record) {
    return wording(record, Settings.DEFAULT);
  }

  static RecordWording wording(ExamRecord record, Settings settings) {
    return new RecordWording(record, assess(record), settings);
  }

  static Assessment assess(ExamRecord record) {
    return Assessor.of(Protocol.standard()).assess(record, Settings.DEFAULT, ZoneOffset.UTC);
  }
}
