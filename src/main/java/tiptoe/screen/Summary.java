package tiptoe.screen;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.Phase;
import tiptoe.wording.ChecklistWording;
import tiptoe.wording.RecordWording;

/** What an examination that is over leaves to do, and where its record is. */
public final class Summary {
  private Summary() {}

  public static List<String> of(RecordWording wording, Path folder) {
    List<String> lines = new ArrayList<>();
    boolean ended = wording.record().phase() == Phase.ENDED;
    lines.add(ended ? "EXAMINATION ENDED" : "EXAMINATION NOT ENDED");
    List<String> missing = wording.missingKeySteps();
    list(
        lines,
        "KEY STEPS MISSING",
        missing.isEmpty() ? missing : List.of(String.join(", ", missing)));
    list(lines, "OPEN QUESTIONS", wording.questions());
    list(lines, "TO ACT ON", wording.flags());
    list(lines, "UNSURE, FOR THE REVIEWER", wording.unsure());
    lines.add("");
    lines.add("RECORD  " + folder);
    lines.add("  " + next(ended, folder));
    return lines;
  }

  /** The same where no screen told it as it went on: what was found, then where its record is. */
  public static List<String> plain(RecordWording wording, Path folder) {
    boolean ended = wording.record().phase() == Phase.ENDED;
    List<String> lines = new ArrayList<>(ChecklistWording.of(wording).lines().toList());
    lines.add("");
    lines.add((ended ? "record kept in " : "not ended; record kept in ") + folder);
    lines.add(next(ended, folder));
    return lines;
  }

  private static String next(boolean ended, Path folder) {
    return (ended ? "next: tiptoe review " : "to go on: tiptoe exam --continue ")
        + folder.getFileName();
  }

  private static void list(List<String> lines, String title, List<String> items) {
    lines.add("");
    lines.add(title + (items.isEmpty() ? ": none" : ""));
    items.forEach(item -> lines.add("  " + item));
  }
}
