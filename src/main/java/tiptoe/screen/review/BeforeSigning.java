package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.List;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.wording.RecordWording;

/** What someone should know before signing: all that is missing, open or not as it should be. */
public final class BeforeSigning {
  private BeforeSigning() {}

  /**
   * The lines of it; titles in capitals, what belongs to them behind two spaces.
   *
   * @param problems what is wrong with the sound that is kept, and what becomes of it
   */
  public static List<String> of(RecordWording wording, List<String> problems) {
    List<String> lines = new ArrayList<>();
    ExamRecord record = wording.record();
    if (!record.phase().equals(Phase.ENDED) && record.signatures().isEmpty()) {
      lines.add("THE EXAMINATION WAS NOT ENDED");
    }
    list(lines, "TO BE SETTLED BEFORE SIGNING, OR NAMED", wording.toSettle());
    list(lines, "OPEN QUESTIONS", wording.questions());
    list(lines, "UNSURE, NOT DECIDED", wording.unsure());
    list(lines, "KEY STEPS MISSING", wording.missingKeySteps());
    // Removing it cannot be undone, so that it stands where it is seen without scrolling.
    list(lines, "SOUND", problems);
    list(lines, "TO ACT ON", wording.flags());
    list(lines, "OTHER STEPS MISSING", wording.otherMissingSteps());
    list(lines, "DETAILS MISSING", wording.missingDetails());
    list(
        lines,
        "NOT STATED OF THE BABY",
        wording.assessment().needs().stream()
            .map(need -> wording.words().label(need.fact()))
            .toList());
    return List.copyOf(lines);
  }

  private static void list(List<String> lines, String title, List<String> items) {
    if (!items.isEmpty()) {
      lines.add(title + ": " + items.size());
      items.forEach(item -> lines.add("  " + item));
    }
  }
}
