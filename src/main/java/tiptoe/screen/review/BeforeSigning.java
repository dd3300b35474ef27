package tiptoe.screen.review;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tiptoe.clinical.Assessment;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.exam.Slot;
import tiptoe.protocol.Labels;
import tiptoe.wording.FindingWording;

/** What someone should know before signing: all that is missing, open or not as it should be. */
public final class BeforeSigning {
  private final ExamRecord record;
  private final Assessment assessment;
  private final FindingWording phrasing;
  private final List<String> lines = new ArrayList<>();

  private BeforeSigning(ExamRecord record, Assessment assessment) {
    this.record = record;
    this.assessment = assessment;
    phrasing = new FindingWording(record.protocol());
  }

  /**
   * The lines of it; titles in capitals, what belongs to them behind two spaces.
   *
   * @param problems what is wrong with the sound that is kept
   */
  public static List<String> of(ExamRecord record, Assessment assessment, List<String> problems) {
    BeforeSigning all = new BeforeSigning(record, assessment);
    all.collect(problems);
    return List.copyOf(all.lines);
  }

  private void collect(List<String> problems) {
    if (!record.phase().equals(Phase.ENDED) && record.signatures().isEmpty()) {
      lines.add("THE EXAMINATION WAS NOT ENDED");
    }
    list(
        "OPEN QUESTIONS",
        record.openQuestions().stream().map(asked -> asked.question().text()).toList());
    list(
        "UNSURE, NOT DECIDED",
        record.unsure().stream().map(one -> "\"" + one.heard().text() + "\"").toList());
    list("KEY STEPS MISSING", record.missingKeySteps().stream().map(this::name).toList());
    list(
        "OTHER STEPS MISSING",
        record.missing().stream()
            .filter(slot -> !record.protocol().step(slot.step()).key())
            .map(this::name)
            .toList());
    list(
        "DETAILS MISSING",
        record.missingDetails().stream()
            .map(one -> name(one.slot()) + ": " + Labels.of(one.detail()))
            .toList());
    list(
        "NOT STATED OF THE BABY",
        assessment.needs().stream().map(need -> Labels.of(need.fact())).toList());
    list(
        "TO ACT ON",
        assessment.flags().stream()
            .map(flag -> flag.level().id().toUpperCase(Locale.ROOT) + ": " + flag.advice())
            .toList());
    list("SOUND", problems);
  }

  private String name(Slot slot) {
    return phrasing.name(slot.step(), slot.side());
  }

  private void list(String title, List<String> items) {
    if (!items.isEmpty()) {
      lines.add(title + ": " + items.size());
      items.forEach(item -> lines.add("  " + item));
    }
  }
}
