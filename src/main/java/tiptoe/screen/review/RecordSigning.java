package tiptoe.screen.review;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Review;
import tiptoe.exam.Signature;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordProblem;
import tiptoe.wording.RecordWording;
import tiptoe.wording.StoredExamWording;

/**
 * The signing of a record without a screen.
 *
 * @param addendum the remark that is added to a signed record and signed; null for a draft
 * @param despite why it is signed while something that matters is not settled; null where nobody
 *     said so
 */
public record RecordSigning(
    OpenExam open, RecordWording wording, KeepAudio keep, String addendum, String despite) {
  /**
   * What is missing and open.
   *
   * @throws RecordProblem where there is nothing to sign so
   */
  public List<String> before() throws IOException {
    boolean signed = wording.record().signed();
    if (signed && addendum == null) {
      throw new RecordProblem("it is signed already: an addendum is added by --addendum");
    }
    if (!signed && addendum != null) {
      throw new RecordProblem("expected a signed record for an addendum, found a draft");
    }
    return BeforeSigning.of(wording, open.problems());
  }

  /** What is not as it was recorded, where nobody said why it is signed all the same. */
  public List<String> alterations() throws IOException {
    return isNamed() ? List.of() : open.alterations();
  }

  private boolean isNamed() {
    return despite != null && !despite.isBlank();
  }

  /**
   * What becomes of the sound.
   *
   * @throws RecordProblem where something that matters is neither settled nor named
   */
  public List<String> sound() throws IOException {
    if (!isNamed() && !isSettled()) {
      throw new RecordProblem(
          "not signed: what is not settled is settled by tiptoe review, or named by --despite"
              + " \"why\"");
    }
    return keep.afterSigning(open.audioHashes().size());
  }

  private boolean isSettled() throws IOException {
    return wording.toSettle().isEmpty() && open.alterations().isEmpty();
  }

  /** Signs it, and tells by what it is known. */
  public List<String> sign(Reviewer by, Signer key) throws IOException {
    Review review = open.examination().review(by.name());
    List<String> altered = open.alterations();
    boolean settled = isSettled();
    if (addendum != null) {
      review.startAddendum(addendum);
      review.remark(addendum);
    }
    if (!settled) {
      review.remark(Review.despite(despite.strip(), altered));
    }
    open.sign(by.name(), by.role(), key, keep);
    ExamRecord signed = open.examination().record();
    Signature last = signed.signatures().get(signed.signatures().size() - 1);
    List<String> lines = new ArrayList<>(List.of(StoredExamWording.signatures(signed)));
    if (last.isKeyed()) {
      lines.add("key " + last.fingerprint());
    }
    lines.add("seal " + last.seal());
    return lines;
  }
}
