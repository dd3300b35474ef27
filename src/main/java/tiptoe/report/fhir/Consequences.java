package tiptoe.report.fhir;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.hl7.fhir.r4.model.Annotation;
import org.hl7.fhir.r4.model.CarePlan;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Composition;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DetectedIssue.DetectedIssueSeverity;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import tiptoe.clinical.Flag;
import tiptoe.clinical.PlanItem;
import tiptoe.exam.Handled;
import tiptoe.protocol.Caution;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/** What follows from the findings: flags as detected issues, the plan as a proposed care plan. */
record Consequences(
    FhirDocument document, RecordWording wording, Reference patient, DateTimeType when) {
  void add(Composition composition) {
    if (!wording.assessment().flags().isEmpty()) {
      flags(composition, wording.assessment().flags());
    }
    if (!wording.assessment().plan().isEmpty()) {
      plan(composition, wording.assessment().plan());
    }
  }

  private void flags(Composition composition, List<Flag> flags) {
    List<String> words =
        flags.stream().map(flag -> wording.level(flag) + ", " + advice(flag)).toList();
    Composition.SectionComponent section = FhirDocument.section(composition, "To act on", words);
    int number = 0;
    for (Flag flag : flags) {
      section.addEntry(document.add("flag/" + number++, issue(flag)));
    }
  }

  private String advice(Flag flag) {
    return wording.words().spelled(flag.when() + ": " + flag.advice());
  }

  private DetectedIssue issue(Flag flag) {
    DetectedIssue issue = new DetectedIssue();
    issue
        .setStatus(
            wording.record().signed() && !flag.provisional()
                ? DetectedIssue.DetectedIssueStatus.FINAL
                : DetectedIssue.DetectedIssueStatus.PRELIMINARY)
        .setCode(
            new CodeableConcept(new Coding(Codes.RULES, flag.rule(), null))
                // Apart, since severity has no word above high.
                .addCoding(new Coding(Codes.LEVELS, flag.level().id(), flag.level().id()))
                .setText(flag.rule()))
        .setSeverity(severity(flag))
        .setPatient(patient.copy())
        .setIdentified(when.copy())
        .setDetail(
            (flag.provisional() ? wording.level(flag) : flag.level().id())
                + ", "
                + advice(flag)
                + " ["
                + flag.source()
                + "] "
                + wording.words().spelled(Caution.TEXT));
    document
        .observations(flag.statements())
        .forEach(reference -> issue.addEvidence().addDetail(reference));
    return issue;
  }

  private static DetectedIssueSeverity severity(Flag flag) {
    return switch (flag.level().id()) {
      case "emergency", "urgent" -> DetectedIssueSeverity.HIGH;
      case "arrange" -> DetectedIssueSeverity.MODERATE;
      default -> DetectedIssueSeverity.LOW;
    };
  }

  /** What is to be done, as something that another system can take up and date. */
  private ServiceRequest request(PlanItem item, String due) {
    Words in = wording.words();
    ServiceRequest request = new ServiceRequest();
    request
        .setStatus(status(item))
        .setIntent(ServiceRequest.ServiceRequestIntent.PROPOSAL)
        .setCode(
            new CodeableConcept(new Coding(Codes.RULES, item.id(), null))
                .setText(in.spelled(item.what())))
        .setSubject(patient.copy())
        .setAuthoredOnElement(when.copy());
    Period period = period(item.from(), item.to());
    if (!period.isEmpty()) {
      request.setOccurrence(period);
    }
    priority(item).ifPresent(request::setPriority);
    request.addReasonCode().setText(in.spelled(item.reason()));
    request.addNote().setText(in.spelled(due) + " [" + item.source() + "]");
    if (item.handled() != null) {
      request.addNote(handled(item.handled()));
    }
    return request;
  }

  private static ServiceRequestStatus status(PlanItem item) {
    return item.isDone()
        ? ServiceRequestStatus.COMPLETED
        : item.handled() == null ? ServiceRequestStatus.DRAFT : ServiceRequestStatus.ACTIVE;
  }

  // Severity has no word above high, priority has: an emergency is not only urgent.
  private Optional<ServiceRequest.ServiceRequestPriority> priority(PlanItem item) {
    return wording.assessment().flags().stream()
        .filter(flag -> flag.rule().equals(item.id()))
        .findFirst()
        .map(
            flag ->
                switch (flag.level()) {
                  case EMERGENCY -> ServiceRequest.ServiceRequestPriority.STAT;
                  case URGENT -> ServiceRequest.ServiceRequestPriority.URGENT;
                  case ARRANGE, NOTE -> ServiceRequest.ServiceRequestPriority.ROUTINE;
                });
  }

  private static Annotation handled(Handled handled) {
    Annotation note = new Annotation().setText(FhirDocument.printable(handled.how()));
    if (handled.by() != null) {
      note.setAuthor(FhirDocument.string(handled.by()));
    }
    if (handled.at() != null) {
      note.setTimeElement(FhirDocument.moment(Instant.parse(handled.at())));
    }
    return note;
  }

  /** From one day or moment to another; empty where there is neither. */
  static Period period(String from, String to) {
    Period period = new Period();
    if (from != null) {
      period.setStartElement(new DateTimeType(from));
    }
    if (to != null) {
      period.setEndElement(new DateTimeType(to));
    }
    return period;
  }

  private void plan(Composition composition, List<PlanItem> plan) {
    CarePlan carePlan =
        new CarePlan()
            .setStatus(CarePlan.CarePlanStatus.DRAFT)
            .setIntent(CarePlan.CarePlanIntent.PROPOSAL)
            .setTitle("Follow-up")
            .setSubject(patient.copy());
    List<String> words = new ArrayList<>();
    int number = 0;
    for (PlanItem item : plan) {
      String due = item.due() + (item.from() == null ? "" : " (" + item.from() + ")");
      carePlan.addActivity().setReference(document.add("request/" + number++, request(item, due)));
      words.add(wording.words().spelled(item.what() + ", " + due));
    }
    FhirDocument.section(composition, "Plan", words)
        .setCode(new CodeableConcept(Codes.SHIPPED.ofPlan()))
        .addEntry(document.add("plan", carePlan));
  }
}
