package tiptoe.report;

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
  /** A page up to what stands on it: more of its head, description, title, styles, attributes. */
  static final String PAGE = Shipped.text(HtmlReport.class, "page.html");

  /** No letter is smaller than 9 pt on paper, those in the drawings (12 px) neither. */
  private static final String STYLE = Shipped.text(HtmlReport.class, "report.css");

  private static final String PAPER = Shipped.text(HtmlReport.class, "paper.css");

  /** On a screen, by day and by night, from a phone upwards; the drawings keep a white ground. */
  private static final String SCREEN = Shipped.text(HtmlReport.class, "screen.css");

  private final RecordWording findings;
  private final Markup page = new Markup();

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
    page.add(
        PAGE,
        "Record of a newborn examination",
        findings.title(),
        Markup.of(styles(draft)),
        Markup.of(brief ? " class=\"brief\"" : ""));
    banner();
    page.add("<h1>%s", findings.title());
    if (findings.isDraft()) {
      page.add(" <span class=\"draft\">%s</span>", draft);
    }
    page.add("</h1>\n");
    identity();
    if (!brief) {
      page.add("<p class=\"caution\">%s</p>\n", spelled(Caution.TEXT));
    }
    baby();
    flags();
    if (!brief) {
      figure();
    }
    page.add(brief ? "<div>\n" : "<div class=\"beside\">\n");
    abnormal();
    list("Key steps missing", findings.missingKeySteps());
    list("Not settled", findings.unsettled());
    list("To be stated", findings.needs());
    page.add("</div>\n<div class=\"end\"></div>\n");
    list("Screening programme", findings.programmeLines());
    list("Plan", findings.plan());
    list("Handed on", findings.handover());
    list("Screens and classes", findings.results());
    answers();
    sizes();
    list("Remarks", findings.remarks());
    list("Not heard", findings.gaps());
    list("Signatures", findings.signatures());
    String rules = String.join(", ", findings.assessment().ruleSets());
    page.add("<p class=\"caution\">Rules used: %s.</p>\n", rules);
    banner();
    return page.add("</main>\n</body>\n</html>\n").toString();
  }

  private String styles(String draft) {
    String paper =
        PAPER.formatted(
            brief ? "13mm 12mm 15mm 12mm" : "14mm 12mm 18mm 12mm",
            spelled(Caution.TEXT).replace("\"", "'"),
            head(findings),
            draft);
    return STYLE
        + "</style>\n<style media=\"print\">\n"
        + paper
        + "</style>\n<style media=\"screen\">\n"
        + SCREEN;
  }

  /** At both ends of the page on a screen; on paper it is at the head of every page as well. */
  private void banner() {
    if (!findings.banner().isEmpty()) {
      page.add("<p class=\"altered\">%s</p>\n", findings.banner());
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
      page.add("<p class=\"sticker\">Sticker with the baby’s name and number</p>\n");
    }
    page.add("<p class=\"identity\">%s</p>\n", findings.identityLine());
  }

  // In a style sheet, and inside HTML: what an attacker wrote must not end either.
  private static String css(String text) {
    return text.replaceAll("[^\\p{L}\\p{M}\\p{N} .,:;()/'’_+—-]", " ");
  }

  private void baby() {
    page.add("<p>");
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
    page.add("</p>\n");
  }

  private void fact(String name, String value) {
    page.add("<span class=\"fact\"><b>%s:</b> %s</span> ", name, value);
  }

  private void flags() {
    List<Flag> flags = findings.assessment().flags();
    if (flags.isEmpty()) {
      return;
    }
    page.add("<h2>To act on</h2>\n");
    for (Flag flag : flags) {
      page.add(
          "<p class=\"flag %s\"><span class=\"level\">%s, %s:</span> %s%s"
              + " <span class=\"caution\">[%s]</span></p>\n",
          flag.level().id(),
          findings.level(flag),
          spelled(flag.when()),
          spelled(flag.advice()),
          findings.since(flag),
          flag.source());
    }
  }

  private String spelled(String words) {
    return findings.words().spelled(words);
  }

  private void figure() {
    page.add("<div class=\"figure\">").raw(BodyFigure.svg(findings));
    page.add(
        "<p class=\"caution\">"
            + "Filled square: abnormal. Dashed ring: not fully examined. Dot: answered, and not"
            + " abnormal. The baby’s left is on your right in front.</p></div>\n");
  }

  private void abnormal() {
    List<RecordWording.Row> abnormal = findings.abnormal();
    if (brief && abnormal.isEmpty()) {
      list("Abnormal findings", List.of("none recorded"));
      return;
    }
    page.add("<h2>Abnormal findings</h2>\n");
    if (abnormal.isEmpty()) {
      page.add("<p>None recorded.</p>\n");
      return;
    }
    page.add("<ul>");
    abnormal.forEach(row -> page.add("<li><b>%s</b>: %s</li>", row.name(), row.saidBy()));
    page.add("</ul>\n");
  }

  private void answers() {
    page.add(
        brief
            ? "<p><b>All findings</b> (~ a variant, * stated for the region). "
            : "<h2>All findings</h2>\n<table><thead><tr>"
                + "<th scope=\"col\" class=\"region\">Region</th><th scope=\"col\">Findings"
                + " (! abnormal, ~ a variant, ? not settled)</th></tr></thead>\n<tbody>\n");
    findings.record().protocol().regions().forEach(this::region);
    page.add(brief ? "</p>\n" : "</tbody></table>\n");
  }

  private void region(Region region) {
    List<RecordWording.Row> rows = findings.rows(region);
    List<String> missing = findings.missing(region);
    if (rows.isEmpty() && missing.isEmpty()) {
      return;
    }
    page.add(
        brief ? "<b>%s:</b> " : "<tr><th scope=\"row\">%s</th><td>",
        findings.words().title(region.label()));
    page.raw(rows.stream().map(this::found).collect(Collectors.joining("; ")));
    if (!missing.isEmpty()) {
      page.add(rows.isEmpty() ? "" : ". ")
          .add("<span class=\"missing\">Not recorded: %s</span>", String.join(", ", missing));
    }
    page.add(brief ? ". " : "</td></tr>\n");
  }

  /** What is as expected needs no sign. */
  private String found(RecordWording.Row row) {
    boolean plain = row.sign() == Sign.DONE || row.sign() == Sign.SKIPPED;
    String said = row.text() + (row.group() ? brief ? "*" : " (stated for the region)" : "");
    boolean stressed = row.sign() == Sign.ABNORMAL || row.sign() == Sign.UNSURE;
    return new Markup()
        .add(
            stressed ? "<span class=\"abnormal\">%s</span>" : "%s",
            plain ? said : row.mark() + " " + said)
        .toString();
  }

  private void sizes() {
    Markup charts = new Markup();
    for (SizeMeasure measure : SizeMeasure.values()) {
      GrowthChart.svg(findings, measure).ifPresent(charts::raw);
    }
    list("Size", findings.sizes());
    if (!charts.isEmpty()) {
      page.add("<div class=\"charts\">%s", charts);
      page.add(
          "<p class=\"caution\">%s INTERGROWTH-21st newborn size standard for this sex;"
              + " a cross in a ring: this baby.</p></div>\n",
          spelled("Curves: 3rd, 10th, 50th, 90th and 97th centile, computed from the"));
    }
  }

  private void list(String title, List<String> lines) {
    if (!brief) {
      page.list(title, lines);
    } else if (!lines.isEmpty()) {
      page.add("<p><b>%s:</b> %s</p>\n", title, String.join("; ", lines));
    }
  }
}
