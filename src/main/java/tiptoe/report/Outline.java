package tiptoe.report;

import java.util.List;
import java.util.Map;
import tiptoe.clinical.Flag;
import tiptoe.protocol.Caution;
import tiptoe.protocol.Region;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/**
 * The order in which a report tells things, the same in plain text and in Markdown: what to act on
 * first, then what was found, then what was not examined.
 */
abstract class Outline {
  private final StringBuilder text = new StringBuilder();

  abstract String heading(int level, String words);

  abstract String item(String words);

  abstract String emphasised(String words);

  final String tell(RecordWording findings) {
    if (!findings.banner().isEmpty()) {
      text.append(emphasised(findings.banner())).append("\n\n");
    }
    text.append(heading(1, findings.title()));
    section("Not as it was", findings.alterations());
    if (findings.isDraft()) {
      text.append(emphasised("DRAFT — not signed")).append("\n\n");
    }
    identity(findings);
    text.append(findings.words().spelled(Caution.TEXT)).append("\n\n");
    facts(findings);
    flags(findings);
    section("Key steps missing", findings.missingKeySteps());
    section("Abnormal", findings.abnormal().stream().map(RecordWording.Row::text).toList());
    section("Not settled", findings.unsettled());
    text.append(heading(2, "Findings"));
    for (Region region : findings.record().protocol().regions()) {
      region(findings, region);
    }
    section("Size", findings.sizes());
    section("Screens and classes", findings.results());
    section("Screening programme", findings.programmeLines());
    section("Plan", findings.plan());
    section("Handed on", findings.handover());
    section("To be stated", findings.needs());
    section("Not heard", findings.gaps());
    section("Remarks", findings.remarks());
    section("Signatures", findings.signatures());
    section("Rules used", findings.assessment().ruleSets());
    if (!findings.banner().isEmpty()) {
      text.append(emphasised(findings.banner())).append("\n\n");
    }
    return text.toString().stripTrailing() + "\n";
  }

  private void identity(RecordWording findings) {
    if (!findings.record().baby().isIdentified()) {
      text.append(emphasised(RecordWording.UNIDENTIFIED)).append("\n\n");
    }
    findings.identity().forEach((name, said) -> text.append(item(name + ": " + said)));
    if (!findings.identity().isEmpty()) {
      text.append('\n');
    }
  }

  private void facts(RecordWording findings) {
    for (Map.Entry<String, String> fact : findings.baby().entrySet()) {
      text.append(item(fact.getKey() + ": " + fact.getValue()));
    }
    if (findings.asOf() != null) {
      text.append(item("Record as of: " + RecordWording.moment(findings.asOf())));
    }
    if (!findings.dictated().isEmpty()) {
      text.append(item("Dictated by: " + findings.dictated()));
    }
    text.append('\n');
  }

  private void flags(RecordWording findings) {
    section(
        "To act on",
        findings.assessment().flags().stream().map(flag -> flag(flag, findings)).toList());
  }

  private static String flag(Flag flag, RecordWording findings) {
    Words words = findings.words();
    return "%s (%s): %s%s [%s]"
        .formatted(
            words.title(flag.level().id())
                + findings.level(flag).substring(flag.level().id().length()),
            words.spelled(flag.when()),
            words.spelled(flag.advice()),
            findings.since(flag),
            flag.source());
  }

  private void region(RecordWording findings, Region region) {
    List<RecordWording.Row> rows = findings.rows(region);
    List<String> missing = findings.missing(region);
    if (rows.isEmpty() && missing.isEmpty()) {
      return;
    }
    text.append(heading(3, findings.words().title(region.label())));
    rows.forEach(row -> text.append(item(row.line())));
    if (!missing.isEmpty()) {
      text.append(item("not recorded: " + String.join(", ", missing)));
    }
    text.append('\n');
  }

  private void section(String title, List<String> lines) {
    if (!lines.isEmpty()) {
      text.append(heading(2, title));
      lines.forEach(line -> text.append(item(line)));
      text.append('\n');
    }
  }
}
