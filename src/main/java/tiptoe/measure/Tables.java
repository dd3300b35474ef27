package tiptoe.measure;

import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Collectors;

/** The figures as tables for people. */
public final class Tables {
  /**
   * A column.
   *
   * @param width of its cells; below 0 for those that begin at the left
   */
  private record Column(String head, int width, Function<Figures, Object> cell) {
    String padded(Object content) {
      return ("%" + width + "s").formatted(content);
    }
  }

  private static final Column SET = new Column("set", -14, row -> cut(row.set()));
  private static final Column CONDITION =
      new Column("condition", -13, row -> row.condition().name());
  private static final Column FILES = new Column("files", 5, Figures::files);

  private static final List<Column> SCRIPTED =
      List.of(
          SET,
          CONDITION,
          FILES,
          new Column("lines", 5, Figures::lines),
          new Column("exact", 6, row -> percent(row.ofLines(row.exact()))),
          new Column("meant", 6, row -> percent(row.ofLines(row.understood()))),
          new Column("wrong", 6, row -> percent(row.ofLines(row.wrong()))),
          new Column("missed", 6, row -> percent(row.ofLines(row.missed()))),
          new Column("prec.", 6, row -> percent(row.precision())),
          new Column("recall", 6, row -> percent(row.recall())),
          new Column("F1", 6, row -> percent(row.f1())),
          new Column("false (/h)", 10, row -> withRate(row, row.falseAnswers())));

  private static final List<Column> UTTERANCES =
      List.of(
          SET,
          CONDITION,
          new Column("min", 5, Tables::minutes),
          new Column("counted", 6, Figures::accepted),
          new Column("unsure", 6, Figures::unsure),
          new Column("ignored", 7, Figures::ignored),
          new Column("RTF", 6, Tables::realTimeFactor),
          new Column("timed", 7, row -> row.latencies().size()),
          new Column("p50 s", 5, row -> number("%.2f", row.latency(0.5))),
          new Column("p95 s", 10, row -> number("%.2f", row.latency(0.95))));

  private static final List<Column> OFF_SCRIPT =
      List.of(
          SET,
          CONDITION,
          FILES,
          new Column("min", 6, Tables::minutes),
          new Column("accepted (/h)", 14, row -> withRate(row, row.accepted())),
          new Column("commands", 9, Figures::commands),
          new Column("unsure (/h)", 14, row -> withRate(row, row.unsure())),
          new Column("ignored", 8, Figures::ignored),
          new Column("RTF", 6, Tables::realTimeFactor));

  private Tables() {}

  /** For recordings with a script or answers. */
  public static String scripted(List<Figures> rows) {
    return table(SCRIPTED, rows) + System.lineSeparator() + table(UTTERANCES, rows);
  }

  /** For recordings in which nothing should be accepted. */
  public static String offScript(List<Figures> rows) {
    return table(OFF_SCRIPT, rows);
  }

  private static String table(List<Column> columns, List<Figures> rows) {
    StringBuilder text = new StringBuilder(line(columns, Column::head));
    rows.forEach(row -> text.append(line(columns, column -> column.cell().apply(row))));
    return text.toString();
  }

  private static String line(List<Column> columns, Function<Column, Object> content) {
    return columns.stream()
        .map(column -> column.padded(content.apply(column)))
        .collect(Collectors.joining(" ", "", System.lineSeparator()));
  }

  private static String minutes(Figures row) {
    return number("%.1f", row.hours() * 60);
  }

  private static String realTimeFactor(Figures row) {
    return number("%.3f", row.realTimeFactor());
  }

  private static String withRate(Figures row, int count) {
    return "%d (%s)".formatted(count, number("%.1f", row.perHour(count)));
  }

  private static String percent(double share) {
    return number("%.1f%%", 100 * share);
  }

  private static String number(String form, double number) {
    return Double.isFinite(number) ? String.format(Locale.ROOT, form, number) : "-";
  }

  private static String cut(String name) {
    return name.length() <= 14 ? name : name.substring(0, 13) + "…";
  }
}
