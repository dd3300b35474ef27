package tiptoe.report;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import tiptoe.clinical.Flag;
import tiptoe.clinical.SizeMeasure;
import tiptoe.protocol.Caution;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Region;

/** The page that people read, on a screen or as PDF: well-formed HTML without script or network. */
final class HtmlReport {
  private static final String STYLE =
      """
      @page { size: A4; margin: 14mm 12mm 15mm 12mm;
        @bottom-left { content: "%s"; font-family: "DejaVu Sans"; font-size: 6.5pt; }
        @bottom-right { content: counter(page) " / " counter(pages); font-family: "DejaVu Sans"; font-size: 6.5pt; }
        @top-right { content: "%s"; font-family: "DejaVu Sans"; font-size: 9pt; font-weight: bold; } }
      body { font-family: "DejaVu Sans", sans-serif; font-size: 8pt; line-height: 1.3; color: #111;
        max-width: 186mm; margin: 0 auto; }
      h1 { font-size: 13pt; margin: 0 0 1mm 0; }
      h2 { font-size: 9.5pt; margin: 3mm 0 1mm 0; border-bottom: 0.6pt solid #777; }
      ul { margin: 0; padding-left: 4.5mm; }
      p { margin: 0 0 1mm 0; }
      .draft { border: 1.2pt solid #000; padding: 0.5mm 2mm; font-weight: bold; }
      .caution { font-size: 7pt; color: #333; }
      .flag { border-left: 3pt solid #000; padding: 0.6mm 2mm; margin: 0 0 1mm 0; }
      .arrange { border-left-style: dashed; } .note { border-left-width: 1pt; }
      .level { font-weight: bold; }
      table { border-collapse: collapse; width: 100%%; }
      th, td { text-align: left; vertical-align: top; padding: 0.35mm 1.5mm; }
      table.all td, table.all th { border-bottom: 0.4pt solid #bbb; }
      .abnormal { font-weight: bold; }
      .missing { font-style: italic; }
      """;

  private final Findings findings;
  private final StringBuilder page = new StringBuilder();

  private HtmlReport(Findings findings) {
    this.findings = findings;
  }

  static String of(Findings findings) {
    return new HtmlReport(findings).page();
  }

  private String page() {
    String draft = findings.isDraft() ? "DRAFT — not signed" : "";
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"UTF-8\" />\n<title>")
        .append(escaped(findings.title()))
        .append("</title>\n<style>\n")
        .append(STYLE.formatted(Caution.TEXT.replace("\"", "'"), draft))
        .append("</style>\n</head>\n<body>\n");
    page.append("<h1>").append(escaped(findings.title())).append("</h1>\n");
    if (findings.isDraft()) {
      page.append("<p><span class=\"draft\">").append(draft).append("</span></p>\n");
    }
    page.append("<p class=\"caution\">").append(escaped(Caution.TEXT)).append("</p>\n");
    baby();
    flags();
    abnormalAndFigure();
    list("Not settled", findings.unsettled());
    answers();
    sizes();
    list("Screens and classes", findings.results());
    list("Plan", findings.plan());
    list("To be stated", findings.needs());
    list("Not heard", findings.gaps());
    list("Remarks", findings.remarks());
    list("Signatures", findings.signatures());
    list("Rules used", findings.assessment().ruleSets());
    return page.append("</body>\n</html>\n").toString();
  }

  private void baby() {
    page.append("<p>");
    for (Map.Entry<String, String> fact : findings.baby().entrySet()) {
      page.append("<b>")
          .append(escaped(fact.getKey()))
          .append(":</b> ")
          .append(escaped(fact.getValue()))
          .append(" &#160; ");
    }
    page.append("<b>Record as of:</b> ")
        .append(escaped(Findings.moment(findings.asOf())))
        .append("</p>\n");
  }

  private void flags() {
    List<Flag> flags = findings.assessment().flags();
    if (flags.isEmpty()) {
      return;
    }
    page.append("<h2>To act on</h2>\n");
    for (Flag flag : flags) {
      page.append("<div class=\"flag ")
          .append(flag.level().id())
          .append("\"><span class=\"level\">")
          .append(escaped(flag.level().id().toUpperCase(Locale.ROOT)))
          .append(", ")
          .append(escaped(flag.when()))
          .append(":</span> ")
          .append(escaped(flag.advice()))
          .append(" <span class=\"caution\">[")
          .append(escaped(flag.source()))
          .append("]</span></div>\n");
    }
  }

  private void abnormalAndFigure() {
    page.append("<h2>Abnormal findings</h2>\n<table><tr><td>");
    List<Findings.Row> abnormal = findings.abnormal();
    if (abnormal.isEmpty()) {
      page.append("<p>None recorded.</p>");
    } else {
      page.append("<ul>");
      abnormal.forEach(
          row ->
              page.append("<li><b>")
                  .append(escaped(row.name()))
                  .append("</b>: ")
                  .append(escaped(row.said()))
                  .append("</li>"));
      page.append("</ul>");
    }
    page.append(
            "<p class=\"caution\">In the figure: filled square, abnormal; dashed ring, not fully")
        .append(" examined; dot, answered and not abnormal. Marks beside the body: general, skin,")
        .append(" measurements on its left, neurology on its right. The baby’s left is on your")
        .append(" right in front.</p></td><td>")
        .append(BodyFigure.svg(findings))
        .append("</td></tr></table>\n");
  }

  private void answers() {
    page.append("<h2>All findings</h2>\n<table class=\"all\">\n")
        .append("<tr><th>Region</th><th>Findings</th><th>Not examined</th></tr>\n");
    for (Region region : findings.record().protocol().regions()) {
      List<Findings.Row> rows = findings.rows(region);
      List<String> missing = findings.missing(region);
      page.append("<tr><th>").append(escaped(Labels.title(region.label()))).append("</th><td>");
      for (Findings.Row row : rows) {
        boolean abnormal = row.mark().equals("!");
        page.append(abnormal ? "<span class=\"abnormal\">" : "<span>")
            .append(escaped(row.mark() + " " + row.name() + ": " + row.said()))
            .append(row.group() ? " (stated for the region)" : "")
            .append("</span>; ");
      }
      page.append("</td><td class=\"missing\">")
          .append(escaped(String.join(", ", missing)))
          .append("</td></tr>\n");
    }
    page.append("</table>\n");
  }

  private void sizes() {
    list("Size", findings.sizes());
    StringBuilder charts = new StringBuilder();
    for (SizeMeasure measure : SizeMeasure.values()) {
      GrowthChart.svg(findings, measure)
          .ifPresent(svg -> charts.append("<td>").append(svg).append("</td>"));
    }
    if (!charts.isEmpty()) {
      page.append("<table><tr>").append(charts).append("</tr></table>\n");
      page.append("<p class=\"caution\">Curves: 3rd, 10th, 50th, 90th and 97th centile, computed")
          .append(" from the INTERGROWTH-21st newborn size standard for this sex.</p>\n");
    }
  }

  private void list(String title, List<String> lines) {
    if (!lines.isEmpty()) {
      page.append("<h2>").append(escaped(title)).append("</h2>\n<ul>\n");
      lines.forEach(line -> page.append("<li>").append(escaped(line)).append("</li>\n"));
      page.append("</ul>\n");
    }
  }

  private static String escaped(String text) {
    return Markup.escaped(text);
  }
}
