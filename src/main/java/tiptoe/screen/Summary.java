package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import tiptoe.clinical.Assessment;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.wording.FindingWording;

/** What an examination that is over leaves to do, and where its record is. */
public final class Summary {
  private Summary() {}

  /** The lines of it. */
  public static List<String> of(
      ExamRecord record, Assessment assessment, java.nio.file.Path folder) {
    FindingWording phrasing = new FindingWording(record.protocol());
    List<String> lines = new ArrayList<>();
    lines.add(record.phase() == Phase.ENDED ? "EXAMINATION ENDED" : "EXAMINATION NOT ENDED");
    list(
        lines,
        "KEY STEPS MISSING",
        record.missingKeySteps().stream()
            .map(slot -> phrasing.name(slot.step(), slot.side()))
            .collect(Collectors.collectingAndThen(Collectors.joining(", "), Summary::unlessEmpty)));
    list(
        lines,
        "OPEN QUESTIONS",
        record.openQuestions().stream().map(asked -> asked.question().text()).toList());
    list(
        lines,
        "TO ACT ON",
        assessment.flags().stream()
            .map(
                flag -> flag.level().id().toUpperCase(java.util.Locale.ROOT) + ": " + flag.advice())
            .toList());
    list(
        lines,
        "UNSURE, FOR THE REVIEWER",
        record.unsure().stream().map(one -> "\"" + one.heard().text() + "\"").toList());
    lines.add("");
    lines.add("RECORD  " + folder);
    return lines;
  }

  private static List<String> unlessEmpty(String text) {
    return text.isEmpty() ? List.of() : List.of(text);
  }

  private static void list(List<String> lines, String title, List<String> items) {
    lines.add("");
    lines.add(title + (items.isEmpty() ? ": none" : ""));
    items.forEach(item -> lines.add("  " + item));
  }
}
