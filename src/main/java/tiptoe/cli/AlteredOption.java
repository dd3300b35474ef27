package tiptoe.cli;

import java.io.IOException;
import picocli.CommandLine.Option;
import tiptoe.exam.journal.Integrity;
import tiptoe.exam.journal.RecordProblem;
import tiptoe.exam.journal.StoredExam;

/** The option that lets through what is not as it was signed, marked as such. */
final class AlteredOption {
  @Option(
      names = "--altered",
      description = "Also a record that is not as it was written or signed, marked as such.")
  private boolean altered;

  /**
   * Lets a record pass that is as it was written, or any if that was asked for.
   *
   * @throws RecordProblem when it is not, and that was not asked for
   */
  Integrity pass(StoredExam stored) throws IOException {
    return altered ? stored.integrity() : stored.requireAsWritten();
  }
}
