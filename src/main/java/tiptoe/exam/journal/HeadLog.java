package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tiptoe.files.BoundedFile;
import tiptoe.files.OwnerOnly;

/**
 * How far this installation has seen each record come, kept outside the records: lines of a
 * record's id, the number of its last entry and the SHA-256 of that line as it is stored. A journal
 * cannot tell that its end was cut off, since what is left of it is whole; this can.
 */
final class HeadLog {
  private static final int DIGITS = 64;

  private final Path file;

  HeadLog(Path data) {
    file = data.resolve("heads.log");
  }

  synchronized void note(String id, long seq, String head) throws IOException {
    String line = id + " " + seq + " " + head + "\n";
    OwnerOnly.append(file, line.getBytes(StandardCharsets.UTF_8));
  }

  /**
   * What a journal lacks of what was seen of the record of this id.
   *
   * @param heads SHA-256 of its lines as they are stored, in order
   */
  List<String> problems(String id, List<String> heads) throws IOException {
    List<String> problems = new ArrayList<>();
    long missing = 0;
    for (String[] words : lines(id)) {
      long seq = Long.parseLong(words[1]);
      if (seq > heads.size()) {
        missing = Math.max(missing, seq);
      } else if (seq > 0 && !heads.get((int) seq - 1).equals(words[2]) && problems.isEmpty()) {
        problems.add("entry " + seq + ": it is not the one that was kept here");
      }
    }
    if (missing > 0) {
      problems.add(
          "entries up to %s were kept here, found %s: its end was cut off"
              .formatted(missing, heads.size()));
    }
    return problems;
  }

  /** Whether a record was let go of here, in good order, with this as its last entry. */
  boolean isEnd(String id, long seq, String head) throws IOException {
    return lines(id).stream()
        .anyMatch(words -> words[1].equals(Long.toString(seq)) && words[2].equals(head));
  }

  /** Whether a record of this id was ever seen. */
  boolean knows(String id) throws IOException {
    return !lines(id).isEmpty();
  }

  private List<String[]> lines(String id) throws IOException {
    try {
      return new String(BoundedFile.HEADS.bytes(file), StandardCharsets.ISO_8859_1)
          .lines()
          .map(line -> line.split(" "))
          .filter(words -> words.length == 3 && words[0].equals(id))
          .filter(words -> words[1].matches("\\d{1,9}") && words[2].length() == DIGITS)
          .toList();
    } catch (NoSuchFileException e) {
      return List.of();
    }
  }
}
