package tiptoe.measure;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.protocol.Protocol;
import tiptoe.wording.ProblemWording;

/**
 * The records of a place that figures can be made of.
 *
 * @param records each as it was written
 * @param encrypted how many were left out because they are
 * @param problems why others were, for people
 */
public record KeptRecords(List<ExamRecord> records, int encrypted, List<String> problems) {
  public static KeptRecords in(RecordStore store) throws IOException {
    List<ExamRecord> records = new ArrayList<>();
    int encrypted = 0;
    List<String> problems = new ArrayList<>();
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
        records.add(stored.record());
      } catch (IOException e) {
        problems.add(exam.name() + ": " + ProblemWording.of(e));
      }
    }
    return new KeptRecords(records, encrypted, problems);
  }

  /** What was left out and why, for people. */
  public List<String> leftOut() {
    List<String> lines = new ArrayList<>(problems);
    if (encrypted > 0) {
      lines.add("left out, since they are encrypted: " + encrypted);
    }
    return lines;
  }

  public int signed() {
    return (int) records.stream().filter(record -> !record.signatures().isEmpty()).count();
  }

  /** What reviewers found of what was heard. */
  public AgreementTable agreement() {
    return AgreementTable.of(
        Protocol.standard(),
        signed(),
        records.stream().flatMap(record -> Agreement.of(record).stream()).toList());
  }
}
