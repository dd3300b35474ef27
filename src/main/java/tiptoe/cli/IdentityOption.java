package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import picocli.CommandLine.Option;
import tiptoe.exam.StatedIdentity;
import tiptoe.files.BoundedFile;
import tiptoe.protocol.Protocol;
import tiptoe.session.IdentityDialogue;
import tiptoe.settings.Settings;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.Words;

/** Whose examination it is: from a file, or typed or scanned before it begins. */
final class IdentityOption {
  @Option(
      names = "--patient",
      paramLabel = "FILE",
      description = {
        "Who the baby is: a FHIR Patient, or JSON such as",
        "{\"name\": \"Ada Wren\", \"record-number\": \"K123456\"}."
      })
  private Path file;

  @Option(
      names = "--identify",
      description = "Ask who the baby is first; the answer can be typed or scanned.")
  private boolean asks;

  /** What was stated, fact by fact; empty where nothing was. Wrong input is wrong use. */
  Map<String, String> stated(Settings settings) throws IOException {
    Map<String, String> stated = file == null ? Map.of() : read().facts();
    return stated.isEmpty() && asks
        ? IdentityDialogue.ask(new Words(Protocol.standard(), settings), System.in, Console.err())
        : stated;
  }

  private StatedIdentity read() {
    StatedIdentity stated;
    try {
      stated = StatedIdentity.parse(BoundedFile.PATIENT.text(file), Protocol.standard());
    } catch (IOException e) {
      throw new WrongUse("--patient: " + ProblemWording.of(e));
    }
    WrongUse.unless(
        stated.problems().isEmpty(), "--patient: " + String.join("; ", stated.problems()));
    stated.remarks().forEach(remark -> Console.err().println("--patient: " + remark));
    return stated;
  }
}
