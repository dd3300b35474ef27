package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tiptoe.finding.Command;
import tiptoe.finding.FindingNotation;

class ReviewTest {
  private final Bedside bed = new Bedside();
  private final Review review = bed.exam.review("Dr Reed");

  @BeforeEach
  void examine() {
    bed.find("barlow.left positive");
    bed.find("weight 3420 g");
  }

  @Test
  void aChangeTakesThePlaceOfTheStatementWhichStaysVisible() {
    review.change(1, FindingNotation.parse("barlow.right positive"));
    assertEquals("weight 3420 g, barlow.right positive", bed.answers());
    assertEquals("1 replaced, 2 stands, 3 stands", bed.statuses());
    assertEquals("Dr Reed", bed.record().statements().get(2).author());
  }

  @Test
  void whatTheReviewerStatesStandsAtOnce() {
    review.state(FindingNotation.parse("barlow.left negative"));
    assertEquals("weight 3420 g, barlow.left negative", bed.answers());
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void rejectsAndMarksNotExamined() {
    review.reject(2, "scale was off");
    review.notExamined("ortolani", null, "asleep");
    assertEquals(
        "barlow.left positive, ortolani.right not-examined reason=asleep,"
            + " ortolani.left not-examined reason=asleep",
        bed.answers());
    var problem = assertThrows(IllegalArgumentException.class, () -> review.reject(9, "?"));
    assertEquals("expected a statement, found none of number 9", problem.getMessage());
  }

  @Test
  void settlesAContradictionOrDropsAQuestion() {
    bed.find("barlow.left negative");
    bed.find("clavicle crepitus");
    review.settle(1, true);
    assertEquals("weight 3420 g, barlow.left negative", bed.answers());
    review.drop(2, "cannot be told any more");
    assertTrue(bed.record().openQuestions().isEmpty());
  }

  @Test
  void aContradictionClosedWithoutAnAnswerLeavesTheFirstAndTheSecondWaitsNoLonger() {
    String before = bed.answers();
    bed.find("barlow.left negative");
    review.drop(1, "cannot be told any more");
    assertEquals(before, bed.answers());
    RecordedFinding second = bed.record().statements().get(bed.record().statements().size() - 1);
    assertEquals("negative", second.statement().value());
    assertEquals(Status.WITHDRAWN, second.status());
    assertTrue(review.drop(1, "again").isEmpty(), "it is closed already");
    assertTrue(review.drop(99, "which?").isEmpty(), "there is none");
    review.undo();
    assertEquals(1, bed.record().openQuestions().size());
  }

  @Test
  void undoesAndRedoesStepByStep() {
    String before = bed.answers();
    review.reject(1, "mis-heard");
    String one = bed.answers();
    review.change(2, FindingNotation.parse("weight 3240 g"));
    String two = bed.answers();
    review.undo();
    assertEquals(one, bed.answers());
    review.undo();
    assertEquals(before, bed.answers());
    assertTrue(review.undo().isEmpty());
    review.redo();
    review.redo();
    assertEquals(two, bed.answers());
    assertTrue(review.redo().isEmpty());
    review.undo();
    assertEquals("1 rejected, 2 stands, 3 undone", bed.statuses());
    review.state(FindingNotation.parse("length 50 cm"));
    assertEquals(4, bed.record().statements().get(3).number(), "no number is given twice");
  }

  @Test
  void doesNotUndoWhatSomethingSaidSinceBuildsUpon() {
    review.reject(1, "mis-heard");
    bed.find("barlow.left negative");
    assertTrue(review.undo().isEmpty());
    assertEquals("weight 3420 g, barlow.left negative", bed.answers());
  }

  @Test
  void signingSealsTheRecordUntilAnAddendum() {
    bed.command(Command.END_EXAM);
    bed.command(Command.YES);
    review.sign("paediatrician", Map.of("segment-000001-0000000000.wav", "00ff"), Signer.NAME_ONLY);
    assertTrue(bed.record().signed());
    Signature first = bed.record().signatures().get(0);
    assertEquals("Dr Reed", first.name());
    assertEquals(64, first.seal().length());
    var refused = assertThrows(IllegalStateException.class, () -> review.reject(1, "?"));
    assertEquals("the record is signed: start an addendum first", refused.getMessage());
    assertThrows(IllegalStateException.class, () -> bed.exam.goOn("0.1.0", null));

    Review later = bed.exam.review("Dr Finch");
    later.startAddendum("late result");
    later.remark("blood culture sterile");
    later.sign("registrar", Map.of(), Signer.NAME_ONLY);
    assertEquals(2, bed.record().signatures().size());
    assertNotEquals(first.seal(), bed.record().signatures().get(1).seal());
    assertEquals("blood culture sterile", bed.record().remarks().get(0).text());
  }

  @Test
  void theSealCoversEveryEntryBeforeItAndTheSound() {
    Entry signed = new Entry(9, Bedside.START, "aa", signing("s.wav", "00"));
    Entry otherSound = new Entry(9, Bedside.START, "aa", signing("s.wav", "01"));
    Entry otherRecord = new Entry(9, Bedside.START, "ab", signing("s.wav", "00"));
    List<String> seals =
        List.of(signed, otherSound, otherRecord).stream()
            .map(entry -> Signature.of("1", entry, (Event.Signed) entry.event()).seal())
            .toList();
    assertEquals(3, seals.stream().distinct().count());
    // SHA-256 of "aa\nDr Reed\nregistrar\n00  s.wav\n", by sha256sum
    assertEquals(SEAL, seals.get(0));
  }

  private static final String SEAL =
      "a4b94bd0c0507a4adf7b324e661c8ae0e962c94c8c4572a101cb3d2040daeddb";

  private static Event.Signed signing(String file, String hash) {
    return new Event.Signed("Dr Reed", "registrar", Map.of(file, hash), null, null, null);
  }

  @Test
  void theReviewerHasAName() {
    assertThrows(IllegalArgumentException.class, () -> bed.exam.review(" "));
  }
}
