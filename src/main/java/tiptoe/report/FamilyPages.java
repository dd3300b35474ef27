package tiptoe.report;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.clinical.Flag;
import tiptoe.clinical.Level;
import tiptoe.clinical.PlanItem;
import tiptoe.clinical.ProgrammeResult;
import tiptoe.files.Shipped;
import tiptoe.protocol.Caution;
import tiptoe.settings.Setting;
import tiptoe.wording.PlainText;
import tiptoe.wording.RecordWording;

/**
 * Two pages beside the record: a letter to the family doctor, and a page for the parents in plain
 * words. Each is one page for a well baby; what is not settled or not examined is said as such.
 */
final class FamilyPages {
  private static final String STYLE = Shipped.text(FamilyPages.class, "family.css");

  /** Where it is not printed: not up to the edge, and dark where that is wanted. */
  private static final String SCREEN = Shipped.text(FamilyPages.class, "family-screen.css");

  // In plain words. The signs are common practice; those of jaundice on the first day and of pale
  // stools stand in NICE CG98, information for parents.
  private static final String ALARM_SIGNS = Shipped.text(FamilyPages.class, "parents.html");

  private static final DateTimeFormatter PLAIN_DAY =
      DateTimeFormatter.ofPattern("d MMMM uuuu", Locale.UK);

  /** Letters of a date as it is kept. */
  private static final int DAY = 10;

  /** What each part is called to parents, and how it was looked at. */
  private static final Map<String, String> PLAIN =
      Map.of("eyes", "Eyes", "heart", "Heart and pulses", "hips", "Hips", "testes", "Testicles");

  /** Facts a family doctor asks for, in this order. */
  private static final List<String> BIRTH =
      List.of(
          ("gestation birth-weight birth-mode presentation feeding feeds"
                  + " vitamin-k hearing-screen blood-spot hepatitis-b")
              .split(" "));

  private final RecordWording findings;
  private final Markup page = new Markup(PlainText::line);

  private FamilyPages(RecordWording findings) {
    this.findings = findings;
  }

  static String letter(RecordWording findings) {
    return new FamilyPages(findings).letter();
  }

  static String parents(RecordWording findings) {
    return new FamilyPages(findings).parents();
  }

  private String letter() {
    begin("Newborn examination: letter to the family doctor");
    String by = findings.dictated().isEmpty() ? "" : " by " + findings.dictated();
    page.add("<p>Examined: %s%s.</p>\n", RecordWording.moment(began()), by);
    flags();
    page.add("<h2>Result of the screening examination</h2>\n<table><tbody>\n");
    findings.programme().forEach(this::result);
    page.add("</tbody></table>\n");
    page.list(
        "Abnormal findings", findings.abnormal().stream().map(RecordWording.Row::text).toList());
    page.list("To be done", findings.plan());
    page.list("Birth and first days", birth());
    page.list("Size", findings.sizes());
    page.list("Handed on", findings.handover());
    page.list("Not settled", findings.unsettled());
    page.list("Still to be examined", findings.missingKeySteps());
    page.list("Remarks", findings.remarks());
    page.list("Signatures", findings.signatures());
    return end(Caution.TEXT);
  }

  private void flags() {
    // What is to be arranged stands among what is to be done.
    page.list(
        "To act on",
        findings.assessment().flags().stream()
            .filter(flag -> flag.level().compareTo(Level.URGENT) <= 0)
            .map(
                flag ->
                    findings.level(flag)
                        + ", "
                        + findings.words().spelled(flag.when())
                        + ": "
                        + findings.words().spelled(flag.advice()))
            .toList());
  }

  private void result(String part, String outcome) {
    page.add("<tr><th>%s</th><td>%s</td></tr>\n", part, outcome);
  }

  private List<String> birth() {
    return BIRTH.stream()
        .flatMap(
            id ->
                findings.record().baby().fact(id).stream()
                    .map(value -> findings.words().stated(id, value)))
        .map(PlainText::line)
        .toList();
  }

  private String parents() {
    begin("Your baby’s first examination");
    page.add(
        "<p>Your baby was examined from head to toe on %s."
            + " These parts are looked at in every baby:</p>\n<table><tbody>\n",
        plainDay(RecordWording.moment(began())));
    findings.assessment().programme().stream()
        .filter(ProgrammeResult::applies)
        .forEach(one -> result(PLAIN.get(one.part()), plain(one)));
    page.add("</tbody></table>\n");
    if (!findings.abnormal().isEmpty()) {
      page.add(
          "<p>Something else was noted and will be explained to you. "
              + "Please ask the person who examined your baby.</p>\n");
    }
    page.list("What happens next", visits());
    page.raw(ALARM_SIGNS).add("<h2>Whom to call</h2>\n<p>%s</p>\n", contact());
    return end("This page does not take the place of advice from those who care for your baby.");
  }

  private String contact() {
    String told = findings.words().setting(Setting.WHOM_TO_CALL);
    return told.isBlank() ? "________________________________________________" : told;
  }

  private String plain(ProgrammeResult result) {
    return switch (result.outcome()) {
      case NO_CONCERN -> "We found nothing to worry about.";
      case NOT_DONE -> "We could not look at all of this yet. It still has to be done.";
      case NOT_APPLICABLE -> "";
      case REFERRAL -> "We would like somebody to look at this again. You will be told when.";
    };
  }

  // The action of a flag is told by those who carry it out, not by a line of a page.
  private List<String> visits() {
    Set<String> flags =
        findings.assessment().flags().stream().map(Flag::rule).collect(Collectors.toSet());
    return findings.assessment().plan().stream()
        .filter(item -> !flags.contains(item.id()) && !item.id().startsWith("owed-"))
        .map(this::next)
        .toList();
  }

  private String next(PlanItem item) {
    String days =
        Stream.of(item.from(), item.to())
            .filter(day -> day != null)
            .map(
                day ->
                    plainDay(day) + (day.length() > DAY ? ", " + day.substring(DAY + 1, 16) : ""))
            .distinct()
            .collect(Collectors.joining(" to "));
    return findings.words().spelled(item.what() + ", " + item.due())
        + (days.isEmpty() ? "" : " (" + days + ")");
  }

  /** {@code 2 March 2026}, of what begins with a date as it is kept. */
  private static String plainDay(String kept) {
    return kept.length() < DAY ? kept : PLAIN_DAY.format(LocalDate.parse(kept.substring(0, DAY)));
  }

  private java.time.Instant began() {
    return findings.record().entries().isEmpty() ? null : findings.record().entries().get(0).at();
  }

  private void begin(String title) {
    String draft = findings.isDraft() ? "DRAFT — not signed" : "";
    String style = STYLE.formatted(HtmlReport.head(findings), draft);
    page.add(
        HtmlReport.PAGE,
        title,
        title,
        Markup.of(style + "</style>\n<style media=\"screen\">\n" + SCREEN),
        Markup.of(""));
    banner();
    page.add("<h1>%s", title);
    if (findings.isDraft()) {
      page.add(" <span class=\"draft\">%s</span>", draft);
    }
    page.add("</h1>\n");
    if (!findings.record().baby().isIdentified()) {
      page.add("<p class=\"sticker\">Sticker with the baby’s name and number</p>\n");
    }
    page.add("<p><b>%s</b></p>\n", findings.identityLine());
  }

  private void banner() {
    if (!findings.banner().isEmpty()) {
      page.add("<p class=\"urgent\"><b>%s</b></p>\n", findings.banner());
    }
  }

  private String end(String last) {
    page.add("<p>%s</p>\n", findings.words().spelled(last));
    banner();
    return page.add("</main>\n</body>\n</html>\n").toString();
  }
}
