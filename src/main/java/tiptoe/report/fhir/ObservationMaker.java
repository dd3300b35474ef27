package tiptoe.report.fhir;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import tiptoe.clinical.AbnormalNumber;
import tiptoe.clinical.Assessment;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Gestation;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/** Makes an Observation of an answer or of a fact about the baby. */
final class ObservationMaker {
  static final String GROUP = "stated for the region as a whole";
  static final String DENIED = "denied";
  static final String REASON = "reason";
  private static final String CATEGORY =
      "http://terminology.hl7.org/CodeSystem/observation-category";
  private static final String INTERPRETATION =
      "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation";
  private static final String ABSENT = "http://terminology.hl7.org/CodeSystem/data-absent-reason";
  private static final String PROFILES = "http://hl7.org/fhir/StructureDefinition/";

  private final ExamRecord record;
  private final Assessment assessment;
  private final Reference patient;
  private final DateTimeType when;
  private final ObservationStatus status;
  private final Words words;
  private final RecordWording wording;

  ObservationMaker(RecordWording wording, Reference patient, DateTimeType when, boolean isFinal) {
    this.record = wording.record();
    this.assessment = wording.assessment();
    this.patient = patient;
    this.when = when;
    this.status = isFinal ? ObservationStatus.FINAL : ObservationStatus.PRELIMINARY;
    this.words = wording.words();
    this.wording = wording;
  }

  Observation observation(Answer answer) {
    Step step = record.protocol().step(answer.step());
    Codes.Coded coded = Codes.SHIPPED.step(step.id());
    boolean vital = coded != null && coded.profile() != null;
    Observation observation = empty(vital ? "vital-signs" : "exam");
    if (vital) {
      observation.getMeta().addProfile(PROFILES + coded.profile());
    }
    observation.setCode(code(step, coded));
    if (answer.side() != null) {
      observation.setBodySite(
          new CodeableConcept(new Coding(Codes.SIDES, answer.side().id(), answer.side().id()))
              .setText(words.name(step.id(), answer.side())));
    }
    if (Value.NOT_EXAMINED.equals(answer.value())) {
      absent(observation, answer.details().get(REASON));
    } else if (answer.quantity() != null) {
      String ucum = coded == null ? Codes.ucum(answer.quantity().unit()) : coded.ucum();
      Quantity quantity = quantity(answer.quantity().text(), answer.quantity().unit(), ucum);
      if (answer.quantity().comparator() != null) {
        quantity.setComparator(
            Quantity.QuantityComparator.fromCode(answer.quantity().comparator().sign()));
      }
      observation.setValue(quantity);
      assessment
          .abnormal(answer)
          .map(AbnormalNumber::direction)
          .ifPresent(one -> interpret(observation, one.code(), one.label()));
    } else {
      value(observation, step, answer);
    }
    // As it was said, not when the record was closed; a reading of nobody's statement has no more.
    record
        .statement(answer.statement())
        .ifPresent(said -> observation.setEffective(FhirDocument.moment(said.at())));
    if (answer.group()) {
      observation.setMethod(new CodeableConcept().setText(GROUP));
    }
    components(observation, step, answer);
    String reviewer = wording.reviewer(List.of(answer));
    if (!reviewer.isEmpty()) {
      observation.addPerformer().setDisplay(FhirDocument.printable(reviewer));
      observation.addNote().setText("typed or accepted in review");
    }
    return observation;
  }

  /** An observation of a finding that waits, which is marked so and never final. */
  Observation waiting(Answer answer) {
    Observation observation = observation(answer);
    observation.setStatus(ObservationStatus.PRELIMINARY);
    observation.getMeta().addTag(new Coding(Codes.SETTLING, Codes.NOT_SETTLED, "not settled"));
    observation.addNote().setText("not settled: it contradicts another finding that stands");
    return observation;
  }

  private void value(Observation observation, Step step, Answer answer) {
    Value value = step.value(answer.value()).orElseThrow();
    observation.setValue(
        new CodeableConcept(coding(Codes.VALUES, step, step.id() + "." + value.id(), value.label()))
            .setText(words.spelled(value.label())));
    if (value.norm() == Norm.NORMAL || value.norm() == Norm.ABNORMAL) {
      boolean normal = value.norm() == Norm.NORMAL;
      interpret(observation, normal ? "N" : "A", normal ? "Normal" : "Abnormal");
    }
  }

  private static void interpret(Observation observation, String code, String display) {
    observation.addInterpretation(new CodeableConcept(new Coding(INTERPRETATION, code, display)));
  }

  private CodeableConcept code(Step step, Codes.Coded coded) {
    CodeableConcept code = new CodeableConcept().setText(words.step(step.id()));
    if (coded != null) {
      coded.codes().forEach(loinc -> code.addCoding(new Coding(Codes.LOINC, loinc, null)));
    }
    return code.addCoding(coding(Codes.STEPS, step, step.id(), step.label()));
  }

  /** What a ward adds means the same in its own protocol alone, which the version names. */
  private Coding coding(String system, Step step, String code, String label) {
    Coding coding = new Coding(system, code, label);
    record
        .protocol()
        .local()
        .filter(local -> local.steps().contains(step))
        .ifPresent(local -> coding.setSystem(Codes.local(system)).setVersion(local.sha256()));
    return coding;
  }

  private static void absent(Observation observation, String reason) {
    String code = "refused".equals(reason) ? "asked-declined" : "not-performed";
    observation.setDataAbsentReason(new CodeableConcept(new Coding(ABSENT, code, null)));
    if (reason != null) {
      observation.getDataAbsentReason().setText(reason);
    }
  }

  private void components(Observation observation, Step step, Answer answer) {
    for (Map.Entry<String, String> entry : answer.details().entrySet()) {
      if (Value.NOT_EXAMINED.equals(answer.value()) && entry.getKey().equals(REASON)) {
        continue;
      }
      Observation.ObservationComponentComponent component = observation.addComponent();
      component.setCode(
          own(Codes.DETAILS, step.id() + "." + entry.getKey(), Labels.of(entry.getKey())));
      Detail detail = step.detail(entry.getKey()).orElse(null);
      if (detail != null && detail.measure() != null) {
        String unit = detail.measure().unit();
        component.setValue(quantity(entry.getValue(), unit, Codes.ucum(unit)));
      } else {
        component.setValue(new StringType(entry.getValue()));
      }
    }
    for (String denied : answer.denied()) {
      String label = step.value(denied).map(Value::label).orElse(denied);
      observation
          .addComponent()
          .setCode(own(Codes.DETAILS, DENIED, DENIED))
          .setValue(
              new CodeableConcept()
                  .addCoding(coding(Codes.VALUES, step, step.id() + "." + denied, label)));
    }
  }

  /** What was stated of the baby: gestation in days, numbers in their unit, all else in words. */
  Observation fact(String id, String value) {
    Observation observation = empty("survey");
    CodeableConcept code = new CodeableConcept().setText(words.label(id));
    String loinc = Codes.SHIPPED.fact(id);
    if (loinc != null) {
      code.addCoding(new Coding(Codes.LOINC, loinc, null));
    }
    observation.setCode(code.addCoding(new Coding(Codes.FACTS, id, Labels.of(id))));
    Fact fact = record.protocol().fact(id).orElse(null);
    boolean readable = fact != null && fact.problem(value).isEmpty();
    if (readable && fact.kind() == Fact.Kind.GESTATION) {
      String days = Integer.toString(Gestation.parse(value).totalDays());
      observation.setValue(quantity(days, "days", "d"));
    } else if (readable && fact.kind() == Fact.Kind.NUMBER) {
      String unit = fact.measure().unit();
      observation.setValue(quantity(value, unit, Codes.ucum(unit)));
    } else {
      observation.setValue(FhirDocument.string(value));
    }
    return observation;
  }

  private Observation empty(String category) {
    Observation observation = new Observation();
    observation
        .setStatus(status)
        .setSubject(patient.copy())
        .setEffective(when.copy())
        .addCategory(new CodeableConcept(new Coding(CATEGORY, category, null)));
    return observation;
  }

  private static CodeableConcept own(String system, String code, String label) {
    return new CodeableConcept(new Coding(system, code, label));
  }

  private static Quantity quantity(String number, String unit, String ucum) {
    Quantity quantity = new Quantity();
    quantity.setValue(new BigDecimal(number));
    quantity.setUnit(unit).setSystem(Codes.UCUM).setCode(ucum);
    return quantity;
  }
}
