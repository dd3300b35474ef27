package tiptoe.screen.review;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.Signer;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.exam.journal.OpenExam;

/** Signs an examination that is open, with its sound. */
public record ExamSealing(OpenExam open, Signer key, KeepAudio keep)
    implements ReviewService.Sealing {
  @Override
  public List<String> problems() throws IOException {
    List<String> lines = new ArrayList<>(open.problems());
    lines.addAll(keep.afterSigning(open.audioHashes().size()));
    return lines;
  }

  @Override
  public List<String> alterations() throws IOException {
    return open.alterations();
  }

  @Override
  public void sign(String signer, String role) throws IOException {
    open.sign(signer, role, key, keep);
  }
}
