package tiptoe.exam.journal;

import java.nio.file.Files;
import java.nio.file.Path;

/**
 * The folder of one examination.
 *
 * @param path where it is; its name is the id of the examination
 */
public record ExamFolder(Path path) {

  /** The journal: one line for every event, see {@link EventLines}. */
  public Path journal() {
    return path.resolve("journal.jsonl");
  }

  /** The sound, in segments. */
  public Path audio() {
    return path.resolve("audio");
  }

  /** Room on the disk that is kept back for the journal. */
  Path reserve() {
    return path.resolve("reserve");
  }

  /** Held locked by the process that writes. */
  public Path lock() {
    return path.resolve("lock");
  }

  public String name() {
    return path.getFileName().toString();
  }

  public boolean exists() {
    return Files.isRegularFile(journal());
  }

  /** Where an unfinished end of the journal is moved to: a name that is not taken. */
  Path aside() {
    for (int number = 1; ; number++) {
      Path file = path.resolve("unfinished-" + number + ".txt");
      if (!Files.exists(file)) {
        return file;
      }
    }
  }
}
