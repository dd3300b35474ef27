package tiptoe.measure;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What a measurement tells: its figures, what was wrong, and what could not be heard. */
public final class MeasureReport {
  private final List<MeasureRun.Done> done;
  private final boolean offScript;
  private final List<Figures> rows;

  /**
   * @param offScript whether nothing that was said belongs to an examination
   */
  public MeasureReport(List<MeasureRun.Done> done, boolean offScript) {
    this.done = List.copyOf(done);
    this.offScript = offScript;
    Map<String, List<Score>> groups =
        scores()
            .collect(
                Collectors.groupingBy(
                    score -> score.file().toAbsolutePath().getParent() + score.condition().name(),
                    LinkedHashMap::new,
                    Collectors.toList()));
    rows = groups.values().stream().map(Figures::of).toList();
  }

  private Stream<Score> scores() {
    return done.stream().flatMap(one -> one.score().stream());
  }

  /** One object for each recording and condition, and a summary. */
  public List<ObjectNode> json() {
    return Stream.concat(
            done.stream()
                .map(one -> one.score().map(MeasureJson::of).orElseGet(() -> MeasureJson.of(one))),
            Stream.of(MeasureJson.summary(rows)))
        .toList();
  }

  /** Tables for people; empty where nothing was heard. */
  public String tables() {
    return rows.isEmpty() ? "" : offScript ? Tables.offScript(rows) : Tables.scripted(rows);
  }

  /** What stands and should not, or was accepted though nothing was to be, a line each. */
  public List<String> wrong() {
    return scores().flatMap(this::wrong).toList();
  }

  private Stream<String> wrong(Score score) {
    String where = score.file().getFileName() + ", " + score.condition().name() + ": ";
    if (offScript) {
      return score.heard().stream()
          .filter(TimedUtterance::counts)
          .map(one -> where + "accepted \"" + one.text() + "\": " + meant(one));
    }
    return score.condition().stock()
        ? Stream.of()
        : score.wrong().stream().map(key -> where + "false " + key);
  }

  private static String meant(TimedUtterance one) {
    return one.meant().stream().map(ComparableMeaning::text).collect(Collectors.joining("; "));
  }

  /** Why recordings could not be heard, each reason once. */
  public List<String> problems() {
    return done.stream()
        .filter(one -> one.score().isEmpty())
        .map(MeasureRun.Done::problem)
        .distinct()
        .toList();
  }

  /** What of the scripts the grammars do not hold. */
  public List<String> notCovered() {
    return scores()
        .flatMap(
            score ->
                score.notCovered().stream()
                    .map(text -> score.file().getFileName() + ": not understood: " + text))
        .distinct()
        .toList();
  }

  public List<String> worse(Baseline least) {
    return least.problems(rows);
  }
}
