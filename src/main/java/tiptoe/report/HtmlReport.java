package tiptoe.report;

import static org.apache.commons.text.StringEscapeUtils.escapeXml10;

import java.util.List;
import java.util.Map;
import tiptoe.clinical.Flag;
import tiptoe.clinical.SizeMeasure;
import tiptoe.protocol.Caution;
import tiptoe.protocol.Region;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Sign;

/** The page that people read, on a screen or as PDF: well-formed HTML without script or network. */
final class HtmlReport {
  private static final String STYLE =
      """
      @page { size: A4; margin: 10mm 12mm 10mm 12mm;
        @bottom-left { content: "%s"; font-family: "DejaVu Sans"; font-size: 6pt; width: 170mm; }
        @bottom-right { content: counter(page) " / " counter(pages); font-family: "DejaVu Sans"; font-size: 6pt; }
        @top-left { content: "%s"; font-family: "DejaVu Sans"; font-size: 9pt; font-weight: bold; width: 120mm; }
        @top-right { content: "%s"; font-family: "DejaVu Sans"; font-size: 9pt; font-weight: bold; } }
      body { font-family: "DejaVu Sans", sans-serif; font-size: 6.8pt; line-height: 1.12; color: #111;
        max-width: 186mm; margin: 0 auto; }
      h1 { font-size: 12pt; margin: 0 0 0.6mm 0; }
      h2 { font-size: 8.5pt; margin: 1.2mm 0 0.5mm 0; border-bottom: 0.6pt solid #777; }
      ul { margin: 0; padding-left: 4.5mm; }
      p { margin: 0 0 1mm 0; }
      .draft { border: 1.2pt solid #000; padding: 0.2mm 2mm; font-size: 8pt; margin-left: 4mm; }
      .altered { border: 2pt solid #000; padding: 1mm 2mm; font-size: 9pt; font-weight: bold; }
      .caution { font-size: 6.4pt; color: #333; }
      .flag { border-left: 3pt solid #000; padding: 0.2mm 2mm; margin: 0 0 0.7mm 0; }
      .arrange { border-left-style: dashed; } .note { border-left-width: 1pt; }
      .level { font-weight: bold; }
      table { border-collapse: collapse; width: 100%%; }
      th, td { text-align: left; vertical-align: top; padding: 0.35mm 1.5mm; }
      table.halves { table-layout: fixed; }
      table.halves > tbody > tr > td { padding: 0 1.5mm 0 0; }
      table.all td, table.all th { border-bottom: 0.4pt solid #bbb; }
      table.all { table-layout: fixed; }
      col.region { width: 21mm; }
      td.words { width: 112mm; padding-left: 0; }
      .abnormal { font-weight: bold; }
      .missing { font-style: italic; }
      """;

  private final RecordWording findings;
  private final StringBuilder page = new StringBuilder();

  private HtmlReport(RecordWording findings) {
    this.findings = findings;
  }

  static String of(RecordWording findings) {
    return new HtmlReport(findings).page();
  }

  private String page() {
    String draft = findings.isDraft() ? "DRAFT — not signed" : "";
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"UTF-8\" />\n<title>")
        .append(escapeXml10(findings.title()))
        .append("</title>\n<style>\n")
        .append(
            STYLE.formatted(
                spelled(Caution.TEXT).replace("\"", "'"), css(findings.banner()), draft))
        .append("</style>\n</head>\n<body>\n");
    banner();
    page.append("<h1>").append(escapeXml10(findings.title()));
    if (findings.isDraft()) {
      page.append(" <span class=\"draft\">").append(draft).append("</span>");
    }
    page.append("</h1>\n");
    page.append("<p class=\"caution\">")
        .append(escapeXml10(spelled(Caution.TEXT)))
        .append("</p>\n");
    baby();
    flags();
    missingKeySteps();
    abnormalAndFigure();
    list("Not settled", findings.unsettled());
    answers();
    list("Size", findings.sizes());
    charts();
    list("Remarks", findings.remarks());
    list("Not heard", findings.gaps());
    list("Signatures", findings.signatures());
    banner();
    return page.append("</body>\n</html>\n").toString();
  }

  /** At both ends of the page on a screen; on paper it is at the head of every page as well. */
  private void banner() {
    if (!findings.banner().isEmpty()) {
      page.append("<p class=\"altered\">").append(escapeXml10(findings.banner())).append("</p>\n");
    }
  }

  // In a style sheet, and inside HTML: what an attacker wrote must not end either.
  private static String css(String text) {
    return text.replaceAll("[^\\p{L}\\p{N} .,:;()—-]", " ");
  }

  private void baby() {
    page.append("<p>");
    for (Map.Entry<String, String> fact : findings.baby().entrySet()) {
      page.append("<b>")
          .append(escapeXml10(fact.getKey()))
          .append(":</b> ")
          .append(escapeXml10(fact.getValue()))
          .append(" &#160; ");
    }
    page.append("<b>As of:</b> ").append(escapeXml10(RecordWording.moment(findings.asOf())));
    if (!findings.dictated().isEmpty()) {
      page.append(" &#160; <b>Dictated by:</b> ").append(escapeXml10(findings.dictated()));
    }
    page.append("</p>\n");
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
          .append(escapeXml10(findings.level(flag)))
          .append(", ")
          .append(escapeXml10(spelled(flag.when())))
          .append(":</span> ")
          .append(escapeXml10(spelled(flag.advice())))
          .append(escapeXml10(findings.since(flag)))
          .append(" <span class=\"caution\">[")
          .append(escapeXml10(flag.source()))
          .append("]</span></div>\n");
    }
  }

  private String spelled(String words) {
    return findings.words().spelled(words);
  }

  private void missingKeySteps() {
    List<String> missing = findings.missingKeySteps();
    if (!missing.isEmpty()) {
      page.append("<p><b>Key steps missing:</b> ")
          .append(escapeXml10(String.join(", ", missing)))
          .append("</p>\n");
    }
  }

  private void abnormalAndFigure() {
    page.append("<table><tr><td class=\"words\"><h2>Abnormal findings</h2>\n");
    List<RecordWording.Row> abnormal = findings.abnormal();
    if (abnormal.isEmpty()) {
      page.append("<p>None recorded.</p>");
    } else {
      page.append("<ul>");
      abnormal.forEach(
          row ->
              page.append("<li><b>")
                  .append(escapeXml10(row.name()))
                  .append("</b>: ")
                  .append(escapeXml10(row.said()))
                  .append("</li>"));
      page.append("</ul>");
    }
    list("Plan", findings.plan());
    list("Screens and classes", findings.results());
    list("To be stated", findings.needs());
    page.append("</td><td>").append(BodyFigure.svg(findings));
    page.append(
            "<p class=\"caution\">In the figure: filled square, abnormal; dashed ring, not fully")
        .append(" examined; dot, answered and not abnormal. The baby’s left is on your")
        .append(" right in front.</p></td></tr></table>\n");
  }

  private void answers() {
    List<String> regions =
        findings.record().protocol().regions().stream().map(this::region).toList();
    int half = half(regions);
    page.append("<h2>All findings</h2>\n<table class=\"halves\"><tbody><tr>");
    table(regions.subList(0, half));
    table(regions.subList(half, regions.size()));
    page.append("</tr></tbody></table>\n");
  }

  // As many regions as hold half of what there is to read, so that both columns end together.
  private static int half(List<String> regions) {
    int all = regions.stream().mapToInt(String::length).sum();
    int taken = 0;
    int count = 0;
    while (taken < all / 2) {
      taken += regions.get(count++).length();
    }
    return count;
  }

  private void table(List<String> rows) {
    page.append(
        "<td><table class=\"all\"><colgroup><col class=\"region\" /><col /></colgroup><tbody>\n"
            + "<tr><th>Region</th><th>Findings</th></tr>\n");
    rows.forEach(page::append);
    page.append("</tbody></table></td>");
  }

  private String region(Region region) {
    StringBuilder row = new StringBuilder();
    row.append("<tr><th>")
        .append(escapeXml10(findings.words().title(region.label())))
        .append("</th><td>");
    for (RecordWording.Row found : findings.rows(region)) {
      row.append(
              found.sign() == Sign.ABNORMAL || found.sign() == Sign.UNSURE
                  ? "<span class=\"abnormal\">"
                  : "<span>")
          .append(escapeXml10(found.line()))
          .append(";</span> ");
    }
    List<String> missing = findings.missing(region);
    if (!missing.isEmpty()) {
      row.append("<span class=\"missing\">Not recorded: ")
          .append(escapeXml10(String.join(", ", missing)))
          .append("</span>");
    }
    return row.append("</td></tr>\n").toString();
  }

  private void charts() {
    StringBuilder charts = new StringBuilder();
    for (SizeMeasure measure : SizeMeasure.values()) {
      GrowthChart.svg(findings, measure)
          .ifPresent(svg -> charts.append("<td>").append(svg).append("</td>"));
    }
    if (!charts.isEmpty()) {
      page.append("<table><tr>").append(charts).append("</tr></table>\n");
      page.append("<p class=\"caution\">")
          .append(spelled("Curves: 3rd, 10th, 50th, 90th and 97th centile, computed from the"))
          .append(" INTERGROWTH-21st newborn size standard for this sex. ")
          .append(rules())
          .append("</p>\n");
    } else {
      page.append("<p class=\"caution\">").append(rules()).append("</p>\n");
    }
  }

  private String rules() {
    return "Rules used: " + escapeXml10(String.join(", ", findings.assessment().ruleSets())) + ".";
  }

  private void list(String title, List<String> lines) {
    if (!lines.isEmpty()) {
      page.append("<h2>").append(escapeXml10(title)).append("</h2>\n<ul>\n");
      lines.forEach(line -> page.append("<li>").append(escapeXml10(line)).append("</li>\n"));
      page.append("</ul>\n");
    }
  }
}
