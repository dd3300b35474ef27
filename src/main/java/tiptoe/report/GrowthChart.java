package tiptoe.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tiptoe.clinical.NewbornSize;
import tiptoe.clinical.SizeMeasure;
import tiptoe.clinical.SizeModel;
import tiptoe.exam.Answer;
import tiptoe.protocol.Gestation;
import tiptoe.wording.RecordWording;

/**
 * Centile curves of one measure by gestation, computed from the INTERGROWTH-21st newborn size
 * standard, and the baby's point on them.
 */
record GrowthChart(SizeMeasure measure, String sex, Gestation gestation, double value) {
  private static final double[] CENTILES = {3, 10, 50, 90, 97};
  private static final int WIDTH = 226;
  private static final int HEIGHT = 170;
  private static final int LEFT = 40;
  private static final int BOTTOM = 34;
  private static final int TOP = 20;

  /** Letters of 9 pt where a user unit is a CSS pixel; and how far their lines must be apart. */
  private static final int LETTERS = 12;

  private static final int RIGHT = 22;

  /** The chart, where sex and gestation are known and the standard reaches to them. */
  static Optional<String> svg(RecordWording findings, SizeMeasure measure) {
    String sex = findings.record().baby().sex().orElse(null);
    Gestation gestation =
        findings
            .record()
            .baby()
            .fact("gestation")
            .filter(text -> findings.record().protocol().problem("gestation", text).isEmpty())
            .map(Gestation::parse)
            .orElse(null);
    List<Answer> answers = findings.record().answers(measure.step());
    if (sex == null
        || gestation == null
        || answers.isEmpty()
        || answers.get(0).quantity() == null
        || NewbornSize.model(measure, sex, gestation).isEmpty()) {
      return Optional.empty();
    }
    double value = answers.get(0).quantity().number();
    return Optional.of(new GrowthChart(measure, sex, gestation, value).draw(findings));
  }

  // Curves of the standard for births at term and near it; of the preterm models below 33+0.
  private int first() {
    return gestation.compareTo(NewbornSize.STANDARD_FROM) < 0
        ? NewbornSize.EARLIEST.totalDays()
        : NewbornSize.STANDARD_FROM.totalDays();
  }

  private double least() {
    return Math.min(value, model(first()).valueAt(CENTILES[0])) * 0.97;
  }

  private double most() {
    return Math.max(value, model(last()).valueAt(CENTILES[CENTILES.length - 1])) * 1.03;
  }

  private int last() {
    return gestation.compareTo(NewbornSize.STANDARD_FROM) < 0
        ? NewbornSize.STANDARD_FROM.totalDays() - 1
        : NewbornSize.LATEST.totalDays();
  }

  private SizeModel model(int days) {
    return NewbornSize.model(measure, sex, new Gestation(days / 7, days % 7)).orElseThrow();
  }

  private String draw(RecordWording findings) {
    Markup svg = new Markup();
    String name = findings.words().step(measure.step());
    svg.add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\""
            + " height=\"%d\" role=\"img\" aria-label=\"%s by gestation, with the 3rd, 10th,"
            + " 50th, 90th and 97th %s curves and this baby\">",
        WIDTH, HEIGHT, WIDTH, HEIGHT, name, findings.words().spelled("centile"));
    svg.add("<g font-family=\"DejaVu Sans\" font-size=\"%d\" fill=\"#333\">", LETTERS);
    axes(svg, name);
    double above = HEIGHT;
    for (double centile : CENTILES) {
      above = Math.min(y(model(last()).valueAt(centile)) + 4, above - LETTERS + 1);
      curve(svg, centile, above);
    }
    double x = x(gestation.totalDays());
    double y = y(value);
    svg.add(
        "<path d=\"M%.1f %.1f l4 4 m0 -4 l-4 4\" stroke=\"#000\" stroke-width=\"1.6\""
            + " fill=\"none\"/><circle cx=\"%.1f\" cy=\"%.1f\" r=\"4.5\" fill=\"none\""
            + " stroke=\"#000\"/>",
        x - 2, y - 2, x, y);
    return svg.add("</g></svg>").toString();
  }

  private void axes(Markup svg, String name) {
    svg.add(
        "<path d=\"M%d %d V%d H%d\" fill=\"none\" stroke=\"#333\" stroke-width=\"0.8\"/>",
        LEFT, TOP, HEIGHT - BOTTOM, WIDTH - RIGHT);
    svg.add("<text x=\"4\" y=\"12\">%s, %s</text>", name, measure.unit());
    int step = 2;
    for (int week = (first() + 6) / 7; week * 7 <= last(); week += step) {
      svg.add(
          "<text x=\"%.1f\" y=\"%d\" text-anchor=\"middle\">%d</text>",
          x(week * 7), HEIGHT - BOTTOM + 14, week);
    }
    svg.add("<text x=\"%d\" y=\"%d\">weeks of gestation</text>", LEFT + 14, HEIGHT - 5);
    for (double tick : ticks()) {
      svg.add(
          "<text x=\"%d\" y=\"%.1f\" text-anchor=\"end\">%.0f</text>", LEFT - 3, y(tick) + 4, tick);
    }
  }

  private List<Double> ticks() {
    double least = least();
    double most = most();
    double step = measure.unit().equals("g") ? 1000 : most - least > 18 ? 5 : 2;
    List<Double> ticks = new ArrayList<>();
    for (double tick = Math.ceil(least / step) * step; tick < most; tick += step) {
      ticks.add(tick);
    }
    return ticks;
  }

  private void curve(Markup svg, double centile, double labelled) {
    Markup path = new Markup();
    for (int days = first(); days <= last(); days++) {
      path.add(
          "%s%.1f %.1f", days == first() ? "M" : " L", x(days), y(model(days).valueAt(centile)));
    }
    boolean middle = centile == 50;
    svg.add(
        "<path d=\"%s\" fill=\"none\" stroke=\"#666\" stroke-width="
            + (middle ? "\"1.3\"/>" : "\"0.7\" stroke-dasharray=\"3,2\"/>"),
        path);
    svg.add("<text x=\"%d\" y=\"%.1f\">%.0f</text>", WIDTH - RIGHT + 2, labelled, centile);
  }

  private double x(int days) {
    return LEFT + (double) (days - first()) / (last() - first()) * (WIDTH - LEFT - RIGHT);
  }

  private double y(double at) {
    return TOP + (most() - at) / (most() - least()) * (HEIGHT - BOTTOM - TOP);
  }
}
