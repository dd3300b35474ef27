package tiptoe.measure;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.protocol.Protocol;
import tiptoe.wording.ProblemWording;

/**
 * What reviewers found of what was heard, over all records that are kept.
 *
 * @param signed how many are signed
 * @param encrypted how many were left out because they are
 * @param problems why others could not be read, for people
 * @param judged what the signatures say
 */
public record ReviewedRecords(
    int signed, int encrypted, List<String> problems, List<Agreement.Judged> judged) {
  public static ReviewedRecords in(RecordStore store) throws IOException {
    int signed = 0;
    int encrypted = 0;
    List<String> problems = new ArrayList<>();
    List<Agreement.Judged> judged = new ArrayList<>();
    for (ExamFolder exam : store.list()) {
      if (store.isEncrypted(exam)) {
        encrypted++;
        continue;
      }
      try {
        StoredExam stored = store.read(exam, null);
        Integrity integrity = stored.integrity();
        if (integrity.isAltered()) {
          throw new IOException("it is " + integrity.banner(stored.record()));
        }
        if (!stored.record().signatures().isEmpty()) {
          signed++;
          judged.addAll(Agreement.of(stored.record()));
        }
      } catch (IOException e) {
        problems.add(exam.name() + ": " + ProblemWording.of(e));
      }
    }
    return new ReviewedRecords(signed, encrypted, problems, judged);
  }

  public AgreementTable table() {
    return AgreementTable.of(Protocol.standard(), signed, judged);
  }
}
