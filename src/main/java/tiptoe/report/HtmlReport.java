package tiptoe.report;

import static org.apache.commons.text.StringEscapeUtils.escapeXml10;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import tiptoe.clinical.Flag;
import tiptoe.clinical.SizeMeasure;
import tiptoe.files.Shipped;
import tiptoe.protocol.Caution;
import tiptoe.protocol.Region;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Sign;

/** The page that people read, on a screen or as PDF: well-formed HTML without script or network. */
final class HtmlReport {
  /** No letter is smaller than 9 pt on paper, those in the drawings (12 px) neither. */
  private static final String STYLE = Shipped.text(HtmlReport.class, "report.css");

  /** On paper. */
  private static final String PAPER = Shipped.text(HtmlReport.class, "paper.css");

  /** On a screen, by day and by night, from a phone upwards; the drawings keep a white ground. */
  private static final String SCREEN = Shipped.text(HtmlReport.class, "screen.css");

  private final RecordWording findings;
  private final StringBuilder page = new StringBuilder();

  /** Whether titles stand in the line, findings run on, and there is no figure. */
  private final boolean brief;

  private HtmlReport(RecordWording findings, boolean brief) {
    this.findings = findings;
    this.brief = brief;
  }

  static String of(RecordWording findings) {
    return new HtmlReport(findings, false).page();
  }

  /**
   * The same of a well baby in as few lines as may be: where nothing is abnormal a figure has
   * nothing to mark, and what is normal can be read in one go.
   */
  static String brief(RecordWording findings) {
    return new HtmlReport(findings, true).page();
  }

  private String page() {
    String draft = findings.isDraft() ? "DRAFT — not signed" : "";
    page.append("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"UTF-8\" />\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\" />\n")
        .append("<meta name=\"color-scheme\" content=\"light dark\" />\n")
        .append("<meta name=\"description\" content=\"Record of a newborn examination\" />\n")
        .append("<meta name=\"subject\" content=\"Record of a newborn examination\" />\n<title>")
        .append(escapeXml10(findings.title()))
        .append("</title>\n<style>\n")
        .append(STYLE)
        .append("</style>\n<style media=\"print\">\n")
        .append(
            PAPER.formatted(
                brief ? "13mm 12mm 15mm 12mm" : "14mm 12mm 18mm 12mm",
                spelled(Caution.TEXT).replace("\"", "'"),
                head(findings),
                draft))
        .append("</style>\n<style media=\"screen\">\n")
        .append(SCREEN)
        .append("</style>\n</head>\n<body")
        .append(brief ? " class=\"brief\"" : "")
        .append(">\n<main>\n");
    banner();
    page.append("<h1>").append(escapeXml10(findings.title()));
    if (findings.isDraft()) {
      page.append(" <span class=\"draft\">").append(draft).append("</span>");
    }
    page.append("</h1>\n");
    identity();
    if (!brief) {
      page.append("<p class=\"caution\">")
          .append(escapeXml10(spelled(Caution.TEXT)))
          .append("</p>\n");
    }
    baby();
    flags();
    if (!brief) {
      figure();
    }
    page.append("<div").append(brief ? "" : " class=\"beside\"").append(">\n");
    abnormal();
    list("Key steps missing", findings.missingKeySteps());
    list("Not settled", findings.unsettled());
    list("To be stated", findings.needs());
    page.append("</div>\n<div class=\"end\"></div>\n");
    list(
        "Screening programme",
        findings.programme().entrySet().stream()
            .map(part -> part.getKey() + ": " + part.getValue())
            .toList());
    list("Plan", findings.plan());
    list("Handed on", findings.handover());
    list("Screens and classes", findings.results());
    answers();
    sizes();
    list("Remarks", findings.remarks());
    list("Not heard", findings.gaps());
    list("Signatures", findings.signatures());
    page.append("<p class=\"caution\">").append(rules()).append("</p>\n");
    banner();
    return page.append("</main>\n</body>\n</html>\n").toString();
  }

  /** At both ends of the page on a screen; on paper it is at the head of every page as well. */
  private void banner() {
    if (!findings.banner().isEmpty()) {
      page.append("<p class=\"altered\">").append(escapeXml10(findings.banner())).append("</p>\n");
    }
  }

  /** What stands at the head of every page on paper, as a style sheet may hold it. */
  static String head(RecordWording findings) {
    return css(
        findings.banner().isEmpty()
            ? findings.shortIdentity()
            : findings.banner() + " — " + findings.shortIdentity());
  }

  private void identity() {
    if (!findings.record().baby().isIdentified()) {
      page.append("<p class=\"sticker\">Sticker with the baby’s name and number</p>\n");
    }
    page.append("<p class=\"identity\">")
        .append(escapeXml10(findings.identityLine()))
        .append("</p>\n");
  }

  // In a style sheet, and inside HTML: what an attacker wrote must not end either.
  private static String css(String text) {
    return text.replaceAll("[^\\p{L}\\p{M}\\p{N} .,:;()/'’_+—-]", " ");
  }

  private void baby() {
    page.append("<p>");
    Map<String, String> facts = new LinkedHashMap<>(findings.baby());
    if (brief) {
      List<String> denied =
          facts.keySet().stream()
              .filter(fact -> facts.get(fact).equals("no"))
              .map(fact -> fact.substring(0, 1).toLowerCase(Locale.ROOT) + fact.substring(1))
              .toList();
      facts.values().removeIf("no"::equals);
      if (!denied.isEmpty()) {
        facts.put("No", String.join(", ", denied));
      }
    }
    facts.forEach(this::fact);
    fact("As of", RecordWording.moment(findings.asOf()));
    if (!findings.dictated().isEmpty()) {
      fact("Dictated by", findings.dictated());
    }
    page.append("</p>\n");
  }

  private void fact(String name, String value) {
    page.append("<span class=\"fact\"><b>")
        .append(escapeXml10(name))
        .append(":</b> ")
        .append(escapeXml10(value))
        .append("</span> ");
  }

  private void flags() {
    List<Flag> flags = findings.assessment().flags();
    if (flags.isEmpty()) {
      return;
    }
    page.append("<h2>To act on</h2>\n");
    for (Flag flag : flags) {
      page.append("<p class=\"flag ")
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
          .append("]</span></p>\n");
    }
  }

  private String spelled(String words) {
    return findings.words().spelled(words);
  }

  private void figure() {
    page.append("<div class=\"figure\">").append(BodyFigure.svg(findings));
    page.append("<p class=\"caution\">")
        .append("Filled square: abnormal. Dashed ring: not fully examined. Dot: answered, and not")
        .append(" abnormal. The baby’s left is on your right in front.</p></div>\n");
  }

  private void abnormal() {
    List<RecordWording.Row> abnormal = findings.abnormal();
    if (brief && abnormal.isEmpty()) {
      list("Abnormal findings", List.of("none recorded"));
      return;
    }
    page.append("<h2>Abnormal findings</h2>\n");
    if (abnormal.isEmpty()) {
      page.append("<p>None recorded.</p>\n");
      return;
    }
    page.append("<ul>");
    abnormal.forEach(
        row ->
            page.append("<li><b>")
                .append(escapeXml10(row.name()))
                .append("</b>: ")
                .append(escapeXml10(row.saidBy()))
                .append("</li>"));
    page.append("</ul>\n");
  }

  private void answers() {
    if (brief) {
      page.append("<p><b>All findings</b> (~ a variant, * stated for the region). ");
      findings.record().protocol().regions().forEach(this::region);
      page.append("</p>\n");
      return;
    }
    page.append("<h2>All findings</h2>\n<table><thead><tr>")
        .append("<th scope=\"col\" class=\"region\">Region</th><th scope=\"col\">Findings")
        .append(" (! abnormal, ~ a variant, ? not settled)</th></tr></thead>\n<tbody>\n");
    findings.record().protocol().regions().forEach(this::region);
    page.append("</tbody></table>\n");
  }

  private void region(Region region) {
    List<RecordWording.Row> rows = findings.rows(region);
    List<String> missing = findings.missing(region);
    if (rows.isEmpty() && missing.isEmpty()) {
      return;
    }
    page.append(brief ? "<b>" : "<tr><th scope=\"row\">")
        .append(escapeXml10(findings.words().title(region.label())))
        .append(brief ? ":</b> " : "</th><td>");
    page.append(rows.stream().map(this::found).collect(Collectors.joining("; ")));
    if (!missing.isEmpty()) {
      page.append(rows.isEmpty() ? "" : ". ")
          .append("<span class=\"missing\">Not recorded: ")
          .append(escapeXml10(String.join(", ", missing)))
          .append("</span>");
    }
    page.append(brief ? ". " : "</td></tr>\n");
  }

  /** What is as expected needs no sign. */
  private String found(RecordWording.Row row) {
    boolean plain = row.sign() == Sign.DONE || row.sign() == Sign.SKIPPED;
    String said = row.text() + (row.group() ? brief ? "*" : " (stated for the region)" : "");
    String line = escapeXml10(plain ? said : row.mark() + " " + said);
    return row.sign() == Sign.ABNORMAL || row.sign() == Sign.UNSURE
        ? "<span class=\"abnormal\">" + line + "</span>"
        : line;
  }

  private void sizes() {
    StringBuilder charts = new StringBuilder();
    for (SizeMeasure measure : SizeMeasure.values()) {
      GrowthChart.svg(findings, measure).ifPresent(charts::append);
    }
    list("Size", findings.sizes());
    if (!charts.isEmpty()) {
      page.append("<div class=\"charts\">").append(charts);
      page.append("<p class=\"caution\">")
          .append(spelled("Curves: 3rd, 10th, 50th, 90th and 97th centile, computed from the"))
          .append(" INTERGROWTH-21st newborn size standard for this sex; a cross in a ring: this")
          .append(" baby.</p></div>\n");
    }
  }

  private String rules() {
    return "Rules used: " + escapeXml10(String.join(", ", findings.assessment().ruleSets())) + ".";
  }

  private void list(String title, List<String> lines) {
    if (brief && !lines.isEmpty()) {
      page.append("<p><b>")
          .append(escapeXml10(title))
          .append(":</b> ")
          .append(escapeXml10(String.join("; ", lines)))
          .append("</p>\n");
    } else if (!lines.isEmpty()) {
      page.append("<h2>").append(escapeXml10(title)).append("</h2>\n<ul>\n");
      lines.forEach(line -> page.append("<li>").append(escapeXml10(line)).append("</li>\n"));
      page.append("</ul>\n");
    }
  }
}
