package tiptoe.measure;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tiptoe.exam.Event;
import tiptoe.exam.Examination;
import tiptoe.exam.Heard;
import tiptoe.exam.Review;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.MemorySink;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.measure.Agreement.Judged;
import tiptoe.measure.Agreement.Sort;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.wording.QuestionWording;

/** Examinations that were heard and then reviewed, with what that says worked out by hand. */
class AgreementTest {
  private static final Finding LEFT = Finding.of("barlow", Side.LEFT, "negative");
  private static final Finding LEFT_POSITIVE = Finding.of("barlow", Side.LEFT, "positive");
  private static final Finding RIGHT = Finding.of("barlow", Side.RIGHT, "negative");
  private static final Finding CLAVICLE = Finding.of("clavicle", Side.LEFT, "crepitus");

  private final Examination exam =
      Examination.open(
          Protocol.standard(),
          Clock.fixed(Instant.parse("2026-03-01T09:00:00Z"), ZoneOffset.UTC),
          new MemorySink(),
          QuestionWording::of,
          new Event.ExaminationOpened("e1", null, "1", "0.1.0", null, null));
  private double second;

  private void hear(Outcome outcome, Finding... statements) {
    second += 3;
    hear(new Heard(second - 2, second, "words", List.of(), outcome, null), statements);
  }

  private void hear(Heard heard, Finding... statements) {
    List<Meaning> meanings =
        Arrays.stream(statements)
            .map(statement -> (Meaning) new Meaning.States(statement, false))
            .toList();
    exam.hear(heard, new Interpretation(meanings, List.of(), exam.dialogue()));
  }

  private List<String> judged(Review review) {
    review.sign("registrar", Map.of(), Signer.NAME_ONLY);
    return texts();
  }

  private List<String> texts() {
    return Agreement.of(exam.record()).stream().map(AgreementTest::text).toList();
  }

  private static String text(Judged one) {
    String place = one.region() + (one.step() == null ? "" : "/" + one.step());
    return one.sort() + " " + place + (one.right() ? " right" : " wrong");
  }

  @Test
  void whatTheReviewerLeavesIsRightAndWhatHeRejectsOrChangesIsWrong() {
    hear(Outcome.ACCEPTED, LEFT, RIGHT);
    hear(Outcome.ACCEPTED, CLAVICLE);
    Review review = exam.review("Dr Reed");
    review.change(1, LEFT_POSITIVE);
    review.reject(3, "not said");
    assertEquals(
        List.of(
            "ACCEPTED hips/barlow wrong",
            "ACCEPTED hips/barlow right",
            "ACCEPTED clavicles/clavicle wrong"),
        judged(review));
  }

  @Test
  void whatTheReviewerConfirmsIsRight() {
    hear(Outcome.ACCEPTED, LEFT);
    Review review = exam.review("Dr Reed");
    review.state(LEFT);
    assertEquals(List.of("ACCEPTED hips/barlow right"), judged(review));
  }

  @Test
  void anUndoneRejectionDoesNotCount() {
    hear(Outcome.ACCEPTED, LEFT);
    Review review = exam.review("Dr Reed");
    review.reject(1, "slip");
    review.undo();
    assertEquals(List.of("ACCEPTED hips/barlow right"), judged(review));
  }

  @Test
  void anUnsureReadingIsRightOnlyWhenItIsAcceptedAsItWas() {
    hear(Outcome.UNSURE, LEFT);
    hear(Outcome.UNSURE, RIGHT);
    hear(Outcome.UNSURE, CLAVICLE);
    hear(Outcome.UNSURE, CLAVICLE);
    Review review = exam.review("Dr Reed");
    review.acceptOffered(1, List.of(new Meaning.States(LEFT, false)));
    review.accept(2, List.of(LEFT_POSITIVE));
    review.dismiss(3);
    assertEquals(
        List.of(
            "UNSURE hips/barlow right",
            "UNSURE hips/barlow wrong",
            "UNSURE clavicles/clavicle wrong"),
        judged(review));
  }

  @Test
  void whatWasIgnoredIsRightUnlessAStatementIsMadeOfIt() {
    hear(Outcome.IGNORED);
    hear(Outcome.IGNORED);
    Review review = exam.review("Dr Reed");
    review.accept(2, List.of(CLAVICLE));
    assertEquals(List.of("IGNORED null right", "IGNORED clavicles/clavicle wrong"), judged(review));
  }

  @Test
  void judgesNothingThatWasTypedOrContradictedAndLeftOpen() {
    hear(Heard.typed("left barlow negative", 1), LEFT);
    hear(Outcome.ACCEPTED, LEFT_POSITIVE);
    assertEquals(List.of(), judged(exam.review("Dr Reed")));
  }

  @Test
  void judgesNoRecordWithoutASignatureAndNoEditBehindIt() {
    hear(Outcome.ACCEPTED, LEFT);
    assertEquals(List.of(), texts());
    Review review = exam.review("Dr Reed");
    review.sign("registrar", Map.of(), Signer.NAME_ONLY);
    review.startAddendum("second look");
    review.reject(1, "not said");
    assertEquals(List.of("ACCEPTED hips/barlow right"), texts());
  }

  @Test
  void theTableAddsUpByRegionAndStep() {
    List<Judged> judged =
        List.of(
            new Judged(Sort.ACCEPTED, "hips", "barlow", true),
            new Judged(Sort.ACCEPTED, "hips", "ortolani", false),
            new Judged(Sort.ACCEPTED, "clavicles", "clavicle", true),
            new Judged(Sort.IGNORED, null, null, true));
    AgreementTable table = AgreementTable.of(Protocol.standard(), 2, judged);
    String text = table.text();
    assertTrue(text.startsWith("2 signed records"), text);
    assertTrue(text.matches("(?s).*\\nall +2 of 3   67% +- +1 of 1  100%\\n.*"), text);
    assertTrue(text.matches("(?s).*\\nhips +1 of 2   50% +- +-\\n.*"), text);
    assertTrue(text.matches("(?s).*\\n  ortolani +0 of 1    0% +- +-\\n.*"), text);
    List<String> lines = table.json().stream().map(Object::toString).toList();
    assertTrue(
        lines.get(0).startsWith("{\"region\":\"clavicles\",\"accepted\":{\"right\":1,\"of\":1}"),
        lines.get(0));
    assertEquals(
        "{\"summary\":{\"accepted\":{\"right\":2,\"of\":3},\"unsure\":{\"right\":0,\"of\":0},"
            + "\"ignored\":{\"right\":1,\"of\":1},\"records\":2}}",
        lines.get(lines.size() - 1));
  }
}
