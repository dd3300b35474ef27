package tiptoe.measure;

import java.util.List;
import java.util.Locale;

/** The figures as tables for people. */
public final class Tables {
  private static final String SCRIPTED = "%-14s %-13s %5s %5s %6s %6s %6s %6s %6s %6s %6s %10s%n";
  private static final String BOTH = "%-14s %-13s %5s %6s %6s %7s %6s %7s %5s %10s%n";

  private Tables() {}

  /** For recordings with a script or answers. */
  public static String scripted(List<Figures> rows) {
    StringBuilder text = new StringBuilder();
    text.append(
        SCRIPTED.formatted(
            "set",
            "condition",
            "files",
            "lines",
            "exact",
            "meant",
            "wrong",
            "missed",
            "prec.",
            "recall",
            "F1",
            "false (/h)"));
    for (Figures row : rows) {
      text.append(
          SCRIPTED.formatted(
              cut(row.set()),
              row.condition().name(),
              row.files(),
              row.lines(),
              percent(row.ofLines(row.exact())),
              percent(row.ofLines(row.understood())),
              percent(row.ofLines(row.wrong())),
              percent(row.ofLines(row.missed())),
              percent(row.precision()),
              percent(row.recall()),
              percent(row.f1()),
              withRate(row, row.falseAnswers())));
    }
    return text.append(System.lineSeparator()).append(utterances(rows)).toString();
  }

  /** For recordings in which nothing should be accepted. */
  public static String offScript(List<Figures> rows) {
    StringBuilder text = new StringBuilder();
    String form = "%-14s %-13s %5s %6s %14s %9s %14s %8s %6s%n";
    text.append(
        form.formatted(
            "set",
            "condition",
            "files",
            "min",
            "accepted (/h)",
            "commands",
            "unsure (/h)",
            "ignored",
            "RTF"));
    for (Figures row : rows) {
      text.append(
          form.formatted(
              cut(row.set()),
              row.condition().name(),
              row.files(),
              number("%.1f", row.hours() * 60),
              withRate(row, row.accepted()),
              row.commands(),
              withRate(row, row.unsure()),
              row.ignored(),
              number("%.3f", row.realTimeFactor())));
    }
    return text.toString();
  }

  private static String utterances(List<Figures> rows) {
    StringBuilder text = new StringBuilder();
    text.append(
        BOTH.formatted(
            "set",
            "condition",
            "min",
            "counted",
            "unsure",
            "ignored",
            "RTF",
            "timed",
            "p50 s",
            "p95 s"));
    for (Figures row : rows) {
      text.append(
          BOTH.formatted(
              cut(row.set()),
              row.condition().name(),
              number("%.1f", row.hours() * 60),
              row.accepted(),
              row.unsure(),
              row.ignored(),
              number("%.3f", row.realTimeFactor()),
              row.latencies().size(),
              number("%.2f", row.latency(0.5)),
              number("%.2f", row.latency(0.95))));
    }
    return text.toString();
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
