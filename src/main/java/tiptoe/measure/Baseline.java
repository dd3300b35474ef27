package tiptoe.measure;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.ToDoubleFunction;
import tiptoe.files.BoundedFile;

/**
 * Figures that must not get worse. A line of the file is {@code set,condition,figure,bound,value},
 * as in {@code clips,clean,exact,at-least,0.95}; {@code #} begins a comment.
 */
public final class Baseline {
  private static final Map<String, ToDoubleFunction<Figures>> FIGURES =
      new TreeMap<>(
          Map.of(
              "exact", row -> row.ofLines(row.exact()),
              "understood", row -> row.ofLines(row.understood()),
              "wrong", row -> row.ofLines(row.wrong()),
              "missed", row -> row.ofLines(row.missed()),
              "precision", Figures::precision,
              "recall", Figures::recall,
              "f1", Figures::f1,
              "false-answers", Figures::falseAnswers,
              "accepted-per-hour", row -> row.perHour(row.accepted()),
              "unsure-per-hour", row -> row.perHour(row.unsure())));

  private record Bound(String set, String condition, String figure, boolean least, double value) {

    boolean isAbout(Figures row) {
      return row.set().equals(set) && row.condition().name().equals(condition);
    }

    Optional<String> problem(Figures row) {
      double found = FIGURES.get(figure).applyAsDouble(row);
      boolean kept = least ? found >= value : found <= value;
      return kept
          ? Optional.empty()
          : Optional.of(
              "expected %s of %s, %s to be %s %s, found %.4f"
                  .formatted(figure, set, condition, least ? "at least" : "at most", value, found));
    }
  }

  private final List<Bound> bounds;

  private Baseline(List<Bound> bounds) {
    this.bounds = List.copyOf(bounds);
  }

  /** Reads a file; what is wrong with it is told with its line. */
  public static Baseline read(Path file) throws IOException {
    List<Bound> bounds = new ArrayList<>();
    int number = 0;
    try {
      for (String raw : BoundedFile.TEXT.lines(file)) {
        number++;
        String line = raw.replaceFirst("#.*", "").strip();
        if (!line.isEmpty()) {
          bounds.add(bound(line));
        }
      }
    } catch (IllegalArgumentException e) {
      throw new IOException(file.getFileName() + ":" + number + ": " + e.getMessage(), e);
    }
    return new Baseline(bounds);
  }

  private static Bound bound(String line) {
    String[] cells = line.split("\\s*,\\s*");
    if (cells.length != 5) {
      throw new IllegalArgumentException(
          "expected set,condition,figure,bound,value, found " + line);
    }
    if (!FIGURES.containsKey(cells[2])) {
      throw new IllegalArgumentException(
          "expected one of %s, found %s".formatted(String.join(", ", FIGURES.keySet()), cells[2]));
    }
    if (!cells[3].equals("at-least") && !cells[3].equals("at-most")) {
      throw new IllegalArgumentException("expected at-least or at-most, found " + cells[3]);
    }
    try {
      return new Bound(
          cells[0], cells[1], cells[2], cells[3].equals("at-least"), Double.parseDouble(cells[4]));
    } catch (NumberFormatException e) {
      throw new IllegalArgumentException("expected a number, found " + cells[4], e);
    }
  }

  /**
   * What has got worse, for people. A bound on something that was not measured is a problem too, so
   * that a set cannot go missing unseen.
   */
  public List<String> problems(List<Figures> rows) {
    List<String> problems = new ArrayList<>();
    for (Bound bound : bounds) {
      List<Figures> about = rows.stream().filter(bound::isAbout).toList();
      if (about.isEmpty()) {
        problems.add(
            "expected figures of %s, %s, found none".formatted(bound.set(), bound.condition()));
      }
      about.forEach(row -> bound.problem(row).ifPresent(problems::add));
    }
    return problems.stream().distinct().toList();
  }
}
