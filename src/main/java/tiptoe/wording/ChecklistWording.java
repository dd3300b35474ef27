package tiptoe.wording;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import tiptoe.clinical.Size;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Progress;
import tiptoe.protocol.Region;

/** The checklist as plain text: region by region what is answered, and what is missing. */
public final class ChecklistWording {
  private final RecordWording wording;
  private final ExamRecord record;
  private final Words words;
  private final StringBuilder text = new StringBuilder();

  private ChecklistWording(RecordWording wording) {
    this.wording = wording;
    record = wording.record();
    words = wording.words();
  }

  /** The text, each line ended. */
  public static String of(RecordWording wording) {
    ChecklistWording all = new ChecklistWording(wording);
    wording
        .record()
        .baby()
        .facts()
        .forEach(
            (id, value) ->
                all.text.append(
                    "%-20s %s%n".formatted(all.words.label(id), all.words.fact(id, value))));
    wording.record().progress().forEach(all::region);
    all.open();
    return all.text.toString();
  }

  private void region(Progress progress) {
    Region region = record.protocol().region(progress.region()).orElseThrow();
    String title = words.region(region).toUpperCase(Locale.ROOT);
    text.append("%n%-14s %d of %d%n".formatted(title, progress.answered(), progress.total()));
    record.answers().stream()
        .filter(answer -> wording.isIn(region, answer.step()))
        .forEach(answer -> line(wording.sign(answer), answer));
    wording.waiting().stream()
        .filter(answer -> wording.isIn(region, answer.step()))
        .forEach(answer -> line(Sign.UNSURE, answer));
    List<String> missing =
        wording.missing(
            record.missing().stream().filter(slot -> wording.isIn(region, slot.step())).toList());
    if (!missing.isEmpty()) {
      text.append("    missing: ").append(String.join(", ", missing)).append('\n');
    }
  }

  private void line(Sign sign, Answer answer) {
    text.append("  %s %s%n".formatted(sign.ascii(), wording.of(answer)));
  }

  private void open() {
    list("KEY STEPS MISSING", wording.missingKeySteps());
    list("OPEN QUESTIONS", wording.questions());
    list("LEFT TO THE REVIEWER", wording.unsure());
    list("TO ACT ON", wording.flags());
    list("SIZE", wording.assessment().sizes().stream().map(this::size).toList());
    list("LATER", wording.plan());
    list("TO STATE", wording.needs());
    text.append("\nRules: ").append(String.join(", ", wording.assessment().ruleSets()));
    text.append('\n').append(words.spelled(wording.assessment().caution())).append('\n');
  }

  private String size(Size size) {
    return words.measured(size)
        + size.against().stream()
            .map(
                place ->
                    ", "
                        + words.centile(place)
                        + " ("
                        + RecordWording.standard(place.standard())
                        + ")")
            .collect(Collectors.joining())
        + size.remarks().stream()
            .map(remark -> "; " + words.spelled(remark))
            .collect(Collectors.joining());
  }

  private void list(String title, List<String> items) {
    if (!items.isEmpty()) {
      text.append('\n').append(title).append('\n');
      items.forEach(item -> text.append("  ").append(item).append('\n'));
    }
  }
}
