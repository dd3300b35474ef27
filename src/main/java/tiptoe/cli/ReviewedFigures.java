package tiptoe.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.RecordStore;
import tiptoe.exam.journal.StoredExam;
import tiptoe.measure.Agreement;
import tiptoe.measure.AgreementTable;
import tiptoe.protocol.Protocol;
import tiptoe.wording.ProblemWording;

/** How often reviewers found it right, from the records that are kept. */
final class ReviewedFigures {
  private final RecordStore store;
  private final List<Agreement.Judged> judged = new ArrayList<>();
  private int signed;
  private int leftOut;
  private int failed;

  ReviewedFigures(RecordStore store) {
    this.store = store;
  }

  int print(boolean json) throws IOException {
    for (ExamFolder exam : store.list()) {
      try {
        read(exam);
      } catch (IOException e) {
        Console.err().println(exam.name() + ": " + ProblemWording.of(e));
        failed++;
      }
    }
    if (leftOut > 0) {
      Console.err().println("left out, since they are encrypted: " + leftOut);
    }
    if (signed == 0) {
      Console.err().println("no signed record is kept here");
    }
    AgreementTable table = AgreementTable.of(Protocol.standard(), signed, judged);
    if (json) {
      table.json().forEach(Console.out()::println);
    } else if (signed > 0) {
      Console.out().print(table.text());
    }
    return failed == 0 ? 0 : Tiptoe.COULD_NOT;
  }

  private void read(ExamFolder exam) throws IOException {
    if (store.isEncrypted(exam)) {
      leftOut++;
      return;
    }
    StoredExam stored = store.read(exam, null);
    if (!stored.breaks().isEmpty()) {
      throw new IOException("its journal is broken at " + stored.breaks().get(0));
    }
    if (!stored.record().signatures().isEmpty()) {
      signed++;
      judged.addAll(Agreement.of(stored.record()));
    }
  }
}
