package tiptoe.report.fhir;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.BodyStructure;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Observation.ObservationStatus;
import org.hl7.fhir.r4.model.Quantity;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.StringType;
import tiptoe.clinical.AbnormalNumber;
import tiptoe.clinical.MissingItem;
import tiptoe.clinical.Need;
import tiptoe.exam.Answer;
import tiptoe.exam.MissingDetail;
import tiptoe.exam.Slot;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Gestation;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.wording.RecordWording;

/** Makes an Observation of an answer or of a fact about the baby. */
record ObservationMaker(
    FhirDocument document,
    RecordWording wording,
    Reference patient,
    DateTimeType when,
    ObservationStatus status) {
  static final String GROUP = "stated for the region as a whole";
  static final String DENIED = "denied";
  static final String REASON = "reason";
  private static final String CATEGORY =
      "http://terminology.hl7.org/CodeSystem/observation-category";
  private static final String INTERPRETATION =
      "http://terminology.hl7.org/CodeSystem/v3-ObservationInterpretation";
  private static final String ABSENT = "http://terminology.hl7.org/CodeSystem/data-absent-reason";
  private static final String BODY_SITE = "http://hl7.org/fhir/StructureDefinition/bodySite";
  private static final String PROFILES = "http://hl7.org/fhir/StructureDefinition/";

  Observation observation(Answer answer) {
    Step step = wording.record().protocol().step(answer.step());
    Codes.Coded coded = Codes.SHIPPED.step(step.id(), answer.details().values());
    Observation observation = of(step, answer.side(), coded);
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
      wording
          .assessment()
          .abnormal(answer)
          .map(AbnormalNumber::direction)
          .ifPresent(one -> interpret(observation, one.code(), one.label()));
    } else {
      value(observation, step, answer);
    }
    // As it was said, not when the record was closed; a reading of nobody's statement has no more.
    wording
        .record()
        .statement(answer.statement())
        .ifPresent(said -> observation.setEffective(FhirDocument.moment(said.at())));
    if (answer.group()) {
      observation.setMethod(new CodeableConcept().setText(GROUP));
    }
    components(observation, step, answer);
    wanted(answer).forEach(detail -> want(observation, step.id(), detail));
    String reviewer = wording.reviewer(List.of(answer));
    if (reviewer.isEmpty()) {
      document.examiner().ifPresent(observation::addPerformer);
    } else {
      observation.addPerformer().setDisplay(FhirDocument.printable(reviewer));
      observation.addNote().setText("typed or accepted in review");
    }
    return observation;
  }

  private Stream<String> wanted(Answer answer) {
    Slot slot = new Slot(answer.step(), answer.side());
    return Stream.concat(
            wording.record().missingDetails().stream()
                .filter(one -> one.slot().equals(slot))
                .filter(one -> Objects.equals(one.value(), answer.value()))
                .map(MissingDetail::detail),
            wording.assessment().missingBeside(wording.record()).stream()
                .filter(one -> one.step().equals(answer.step()))
                .map(MissingItem::detail)
                .filter(Objects::nonNull))
        .distinct();
  }

  private Observation of(Step step, Side side, Codes.Coded coded) {
    boolean vital = coded != null && coded.profile() != null;
    Observation observation = blank(vital ? "vital-signs" : "exam");
    if (vital) {
      observation.getMeta().addProfile(PROFILES + coded.profile());
    }
    observation.setCode(code(step, coded));
    site(step, side).ifPresent(observation::setBodySite);
    return observation;
  }

  // A side without its part is all that one coding can hold; both stand in the structure.
  private Optional<CodeableConcept> site(Step step, Side side) {
    Optional<Coding> part = Codes.SHIPPED.part(step.id());
    if (side == null) {
      return part.map(new CodeableConcept()::addCoding);
    }
    CodeableConcept site =
        new CodeableConcept(Codes.side(side)).setText(wording.words().name(step.id(), side));
    part.map(
            code ->
                document.add(
                    "site/" + code.getCode() + "/" + side.id(),
                    new BodyStructure()
                        .setLocation(new CodeableConcept(code))
                        .addLocationQualifier(new CodeableConcept(Codes.side(side)))
                        .setPatient(patient.copy())))
        .ifPresent(structure -> site.addExtension(BODY_SITE, structure));
    return Optional.of(site);
  }

  /** A step that nobody has answered: registered, without a value. */
  Observation owed(String step, Side side) {
    return unknown(
        of(wording.record().protocol().step(step), side, Codes.SHIPPED.step(step, List.of())));
  }

  /** A step or a detail of it that the findings make necessary. */
  Observation owed(MissingItem item) {
    Observation observation = owed(item.step(), null);
    if (item.detail() != null) {
      want(observation, item.step(), item.detail());
    }
    observation.addNote().setText(wording.words().spelled(item.reason()));
    return observation;
  }

  /** A fact that a rule cannot do without and nobody has stated. */
  Observation needed(Need need) {
    Observation observation = unknown(blank("survey").setCode(factCode(need.fact())));
    need.reasons()
        .forEach(reason -> observation.addNote().setText(wording.words().spelled(reason)));
    return observation;
  }

  private static Observation unknown(Observation observation) {
    return observation
        .setStatus(ObservationStatus.REGISTERED)
        .setDataAbsentReason(absent("unknown"));
  }

  /** Says in an observation that a detail of it is wanted and was not stated. */
  private static void want(Observation observation, String step, String detail) {
    observation
        .addComponent()
        .setCode(own(Codes.DETAILS, step + "." + detail, Labels.of(detail)))
        .setDataAbsentReason(absent("unknown"));
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
            .setText(wording.words().spelled(value.label())));
    if (value.norm() == Norm.NORMAL || value.norm() == Norm.ABNORMAL) {
      boolean normal = value.norm() == Norm.NORMAL;
      interpret(observation, normal ? "N" : "A", normal ? "Normal" : "Abnormal");
    }
  }

  static void interpret(Observation observation, String code, String display) {
    observation.addInterpretation(new CodeableConcept(new Coding(INTERPRETATION, code, display)));
  }

  private CodeableConcept code(Step step, Codes.Coded coded) {
    CodeableConcept code = new CodeableConcept().setText(wording.words().step(step.id()));
    if (coded != null) {
      coded.codes().forEach(loinc -> code.addCoding(Codes.SHIPPED.loinc(loinc)));
    }
    return code.addCoding(coding(Codes.STEPS, step, step.id(), step.label()));
  }

  /** What a ward adds means the same in its own protocol alone, which the version names. */
  private Coding coding(String system, Step step, String code, String label) {
    Coding coding = new Coding(system, code, label);
    wording
        .record()
        .protocol()
        .local()
        .filter(local -> local.steps().contains(step))
        .ifPresent(local -> coding.setSystem(Codes.local(system)).setVersion(local.sha256()));
    return coding;
  }

  private static void absent(Observation observation, String reason) {
    String code = "refused".equals(reason) ? "asked-declined" : "not-performed";
    observation.setDataAbsentReason(absent(code));
    if (reason != null) {
      observation.getDataAbsentReason().setText(reason);
    }
  }

  static CodeableConcept absent(String code) {
    return own(ABSENT, code, null);
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
              new CodeableConcept(coding(Codes.VALUES, step, step.id() + "." + denied, label)));
    }
  }

  /**
   * What was stated of the baby: gestation in days, numbers in their unit, all else in
   * wording.words().
   */
  Observation fact(String id, String value) {
    Observation observation = blank("survey").setCode(factCode(id));
    wording
        .record()
        .stated(id)
        .filter(stated -> stated.at() != null)
        .ifPresent(stated -> observation.setEffective(FhirDocument.moment(stated.at())));
    Fact fact = wording.record().protocol().fact(id).orElse(null);
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

  private CodeableConcept factCode(String id) {
    CodeableConcept code = new CodeableConcept().setText(wording.words().label(id));
    Optional.ofNullable(Codes.SHIPPED.fact(id)).ifPresent(code::addCoding);
    return code.addCoding(factCoding(id));
  }

  Coding factCoding(String id) {
    return new Coding(
        Codes.FACTS,
        id,
        wording.record().protocol().fact(id).map(Fact::label).orElse(Labels.of(id)));
  }

  /** Without code and value. */
  Observation blank(String category) {
    Observation observation = new Observation();
    observation
        .setStatus(status)
        .setSubject(patient.copy())
        .setEffective(when.copy())
        .addCategory(new CodeableConcept(new Coding(CATEGORY, category, null)));
    return observation;
  }

  static CodeableConcept own(String system, String code, String label) {
    return new CodeableConcept(new Coding(system, code, label));
  }

  static Quantity quantity(String number, String unit, String ucum) {
    Quantity quantity = new Quantity();
    quantity.setValue(new BigDecimal(number));
    quantity.setUnit(unit).setSystem(Codes.UCUM).setCode(ucum);
    return quantity;
  }
}
