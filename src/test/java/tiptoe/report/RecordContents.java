package tiptoe.report;

import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.clinical.MissingItem;
import tiptoe.clinical.PlanItem;
import tiptoe.clinical.ProgrammeResult;
import tiptoe.clinical.Result;
import tiptoe.clinical.Size;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Handover;
import tiptoe.exam.Slot;
import tiptoe.protocol.Norm;

/** What a FHIR document must say beside the answers, worked out from the record itself. */
final class RecordContents {
  private static final Map<String, String> SEVERITIES =
      Map.of("emergency", "high", "urgent", "high", "arrange", "moderate", "note", "low");
  private static final Map<String, String> PRIORITIES =
      Map.of("emergency", "stat", "urgent", "urgent", "arrange", "routine", "note", "routine");
  // The codes are those of R4: event-status, request-status and consent-state-codes.
  private static final Map<String, String> TOLD =
      Map.of(
          "yes", "completed",
          "given", "completed",
          "not-yet", "preparation",
          "due", "preparation",
          "declined", "not-done");
  private static final Map<String, String> REQUESTED =
      Map.of(
          "made", "active",
          "requested", "active",
          "done", "completed",
          "declined", "revoked",
          "due", "draft");
  private static final Map<Norm, String> NORMS = Map.of(Norm.NORMAL, "N", Norm.ABNORMAL, "A");
  private static final Map<String, String> CONSENT =
      Map.of("given", "active", "declined", "rejected");

  private final ExamRecord record;
  private final Assessment assessment;
  private final SortedSet<String> lines = new TreeSet<>();

  RecordContents(ExamRecord record, Assessment assessment) {
    this.record = record;
    this.assessment = assessment;
  }

  SortedSet<String> lines() {
    record.answers().forEach(this::said);
    record.missing().forEach(slot -> lines.add("owed " + slot(slot) + " " + absent(slot)));
    record
        .missingDetails()
        .forEach(
            one ->
                lines.add(
                    "owed " + one.slot().step() + "." + one.detail() + " " + one.slot().side()));
    assessment.missingBeside(record).forEach(this::needed);
    assessment.needs().forEach(need -> lines.add("need " + need.fact() + " unknown"));
    for (Flag flag : assessment.flags()) {
      String level = flag.level().id();
      lines.add("flag " + flag.rule() + " " + level + " " + SEVERITIES.get(level));
    }
    assessment.plan().forEach(this::plan);
    assessment.results().forEach(this::result);
    assessment.sizes().forEach(size -> size.against().forEach(place -> size(size, place)));
    assessment.programme().forEach(this::programme);
    Handover.of(record).stated().values().forEach(one -> handedOn(one.fact(), one.value()));
    return lines;
  }

  // Codes of HL7 ObservationInterpretation; when it was said, in whole seconds.
  private void said(Answer answer) {
    String interpretation =
        answer.quantity() != null
            ? assessment.abnormal(answer).map(one -> one.direction().code()).orElse(null)
            : record
                .protocol()
                .step(answer.step())
                .value(answer.value())
                .map(value -> NORMS.get(value.norm()))
                .orElse(null);
    lines.add(
        "said %s %s %s %s"
            .formatted(
                answer.step(),
                answer.side(),
                record
                    .statement(answer.statement())
                    .orElseThrow()
                    .at()
                    .truncatedTo(ChronoUnit.SECONDS),
                interpretation));
  }

  private static String slot(Slot slot) {
    return slot.step() + " " + slot.side();
  }

  private String absent(Slot slot) {
    String reason = record.deferred().get(slot);
    return reason == null
        ? "unknown"
        : reason.equals("refused") ? "asked-declined" : "not-performed";
  }

  private void needed(MissingItem item) {
    List<Answer> answers = record.answers(item.step());
    if (item.detail() == null || answers.isEmpty()) {
      lines.add("owed " + item.step() + " null unknown");
    }
    if (item.detail() != null) {
      String detail = "owed " + item.step() + "." + item.detail() + " ";
      answers.forEach(answer -> lines.add(detail + answer.side()));
      if (answers.isEmpty()) {
        lines.add(detail + null);
      }
    }
  }

  private void plan(PlanItem item) {
    String status = item.isDone() ? "completed" : item.handled() == null ? "draft" : "active";
    String priority =
        assessment.flags().stream()
            .filter(flag -> flag.rule().equals(item.id()))
            .map(flag -> PRIORITIES.get(flag.level().id()))
            .findFirst()
            .orElse(null);
    lines.add(
        "plan %s %s to %s %s %s".formatted(item.id(), item.from(), item.to(), status, priority));
  }

  private void result(Result result) {
    String start = "result " + result.id() + " " + result.standard() + " ";
    lines.add(start + result.value());
    number(start + "number ", result.number(), result.unit());
    number(start + "phototherapy ", result.phototherapy(), result.unit());
    number(start + "exchange ", result.exchange(), result.unit());
  }

  private void number(String start, Double number, String unit) {
    if (number != null) {
      lines.add(start + number + " " + unit);
    }
  }

  private void size(Size size, Size.Place place) {
    String start = "result " + size.step() + "-centile " + place.standard() + " ";
    lines.add(start + place.centile());
    lines.add(start + "z-score " + place.z() + " z");
    if (size.sizeClass() != null && place.equals(size.against().get(0))) {
      lines.add(start + "size-class " + size.sizeClass().id());
    }
  }

  private void programme(ProgrammeResult result) {
    String start = "programme " + result.part() + " ";
    String outcome =
        switch (result.outcome()) {
          case NO_CONCERN -> "no-concern";
          case REFERRAL -> "referral";
          case NOT_DONE -> "not-performed";
          case NOT_APPLICABLE -> record.baby().sex().isPresent() ? "not-applicable" : "unknown";
        };
    lines.add(start + outcome + " owed " + result.owed().size());
    result
        .referrals()
        .forEach(one -> lines.add(start + one.rule() + " " + one.from() + " to " + one.to()));
  }

  private void handedOn(String fact, String value) {
    Map<String, String> states =
        fact.equals("consent") ? CONSENT : fact.matches("referral-.*|.*-scan") ? REQUESTED : TOLD;
    if (states.containsKey(value)) {
      lines.add("handed on " + fact + " " + states.get(value));
    }
  }
}
