package tiptoe.exam.journal;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import tiptoe.audio.Chunk;
import tiptoe.audio.SegmentStore;
import tiptoe.exam.Heard;
import tiptoe.exam.NotRecorded;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Quantity;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/**
 * A process that records statements and sound until it is killed or cannot go on. It prints {@code
 * shown N} when statement N would be shown as recorded, and {@code sound N} when N samples were
 * given to the store.
 */
final class KilledWriter {
  private static final int CHUNK = 1600;

  private KilledWriter() {}

  /** Arguments: data folder, id of an examination to go on with or {@code new}, most statements. */
  public static void main(String[] args) throws Exception {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    RecordStore store =
        new RecordStore(
            Path.of(args[0]), Protocol.standard(), Clock.systemUTC(), QuestionWording::of);
    try (OpenExam open =
            args[1].equals("new")
                ? store.create("Demo", "0.1.0", null, null)
                : store.open(store.find(args[1]), null);
        SegmentStore sound = open.openSound()) {
      out.println("open " + open.folder().name());
      long position = 0;
      for (int number = 0; number < Integer.parseInt(args[2]); number++) {
        keep(sound, position, out);
        position += CHUNK;
        state(open, 2000 + number % 4000);
        out.println("shown " + open.examination().record().statements().size());
      }
      out.println("done");
    } catch (RecordProblem | NotRecorded e) {
      out.println("problem " + e.getMessage());
    }
  }

  private static void keep(SegmentStore sound, long position, PrintStream out) {
    try {
      sound.append(new Chunk(position, 0, new short[CHUNK]));
      out.println("sound " + (sound.offset() + position + CHUNK));
    } catch (IOException e) {
      out.println("lost sound");
    }
  }

  private static void state(OpenExam open, int grams) {
    Finding weight = Finding.of("weight", new Quantity(grams, "g"));
    Heard heard = new Heard(1, 2, "correction weight " + grams, List.of(), Outcome.ACCEPTED, null);
    open.examination()
        .hear(
            heard,
            new Interpretation(
                List.of(new Meaning.States(weight, true)), List.of(), Dialogue.START));
  }
}
