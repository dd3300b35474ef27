package tiptoe.report.fhir;

import java.util.ArrayList;
import java.util.List;
import org.hl7.fhir.r4.model.CarePlan;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Composition;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.DetectedIssue.DetectedIssueSeverity;
import org.hl7.fhir.r4.model.Reference;
import tiptoe.clinical.Flag;
import tiptoe.clinical.PlanItem;
import tiptoe.protocol.Caution;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/** What follows from the findings: flags as detected issues, the plan as a proposed care plan. */
final class Consequences {
  private final FhirDocument document;
  private final Reference patient;
  private final DateTimeType when;

  Consequences(FhirDocument document, Reference patient, DateTimeType when) {
    this.document = document;
    this.patient = patient;
    this.when = when;
  }

  void add(Composition composition, RecordWording wording) {
    flags(composition, wording);
    plan(composition, wording.assessment().plan(), wording.words());
  }

  private void flags(Composition composition, RecordWording in) {
    List<Flag> flags = in.assessment().flags();
    if (flags.isEmpty()) {
      return;
    }
    Composition.SectionComponent section = composition.addSection().setTitle("To act on");
    List<String> words = new ArrayList<>();
    int number = 0;
    for (Flag flag : flags) {
      section.addEntry(document.add("flag/" + number++, issue(flag, in)));
      words.add(in.level(flag) + ", " + in.words().spelled(flag.when() + ": " + flag.advice()));
    }
    section.setText(FhirDocument.narrative(words));
  }

  private DetectedIssue issue(Flag flag, RecordWording wording) {
    Words in = wording.words();
    DetectedIssue issue = new DetectedIssue();
    issue
        .setStatus(
            wording.record().signed() && !flag.provisional()
                ? DetectedIssue.DetectedIssueStatus.FINAL
                : DetectedIssue.DetectedIssueStatus.PRELIMINARY)
        .setCode(
            new CodeableConcept()
                .addCoding(new Coding(Codes.RULES, flag.rule(), null))
                .setText(flag.rule()))
        .setSeverity(severity(flag))
        .setPatient(patient.copy())
        .setIdentified(when.copy())
        .setDetail(
            (flag.provisional() ? wording.level(flag) : flag.level().id())
                + ", "
                + in.spelled(flag.when() + ": " + flag.advice())
                + " ["
                + flag.source()
                + "] "
                + in.spelled(Caution.TEXT));
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

  private void plan(Composition composition, List<PlanItem> plan, Words in) {
    if (plan.isEmpty()) {
      return;
    }
    CarePlan carePlan = new CarePlan();
    carePlan
        .setStatus(CarePlan.CarePlanStatus.DRAFT)
        .setIntent(CarePlan.CarePlanIntent.PROPOSAL)
        .setTitle("Follow-up")
        .setSubject(patient.copy());
    List<String> words = new ArrayList<>();
    for (PlanItem item : plan) {
      String due = item.due() + (item.from() == null ? "" : " (" + item.from() + ")");
      carePlan
          .addActivity()
          .getDetail()
          .setStatus(CarePlan.CarePlanActivityStatus.NOTSTARTED)
          .setDescription(in.spelled(item.what() + " — " + item.reason()))
          .setScheduled(FhirDocument.string(due));
      words.add(in.spelled(item.what() + ", " + due));
    }
    composition
        .addSection()
        .setTitle("Plan")
        .setText(FhirDocument.narrative(words))
        .addEntry(document.add("plan", carePlan));
  }
}
