package tiptoe.report.fhir;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.ZonedDateTime;
import java.util.Date;
import java.util.TimeZone;
import org.hl7.fhir.r4.model.Address;
import org.hl7.fhir.r4.model.CodeType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.DateTimeType;
import org.hl7.fhir.r4.model.DateType;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Enumerations.AdministrativeGender;
import org.hl7.fhir.r4.model.Extension;
import org.hl7.fhir.r4.model.Identifier;
import org.hl7.fhir.r4.model.Patient;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Practitioner;
import org.hl7.fhir.r4.model.Reference;
import tiptoe.exam.Baby;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Phase;
import tiptoe.exam.Signature;
import tiptoe.protocol.Fact;

/** Whom the document is about, who examined and signed, and when they met. */
final class Persons {
  private static final String EXTENSIONS = "http://hl7.org/fhir/StructureDefinition/patient-";
  private static final String ABSENT = "http://hl7.org/fhir/StructureDefinition/data-absent-reason";

  private Persons() {}

  /**
   * The baby, as far as it was stated who it is.
   *
   * @param id what it is called in this record alone
   */
  static Patient patient(ExamRecord record, Identifier id) {
    Patient patient = new Patient();
    Baby baby = record.baby();
    patient.addIdentifier(id);
    baby.fact("record-number").ifPresent(number -> patient.addIdentifier(recordNumber(number)));
    baby.fact("name")
        .or(record::label)
        .ifPresent(name -> patient.addName().setText(FhirDocument.printable(name)));
    baby.sex().ifPresent(sex -> patient.setGender(gender(sex)));
    baby.fact("born-at")
        .filter(born -> record.protocol().problem("born-at", born).isEmpty())
        .ifPresent(born -> patient.setBirthDateElement(birth(born)));
    baby.fact("place-of-birth")
        .ifPresent(
            place ->
                patient.addExtension(
                    new Extension(
                        EXTENSIONS + "birthPlace",
                        new Address().setText(FhirDocument.printable(place)))));
    mother(baby, patient);
    return patient;
  }

  private static Identifier recordNumber(String number) {
    Identifier identifier = new Identifier().setValue(FhirDocument.printable(number));
    return identifier.setType(
        ObservationMaker.own(
            "http://terminology.hl7.org/CodeSystem/v2-0203", "MR", "Medical record number"));
  }

  private static AdministrativeGender gender(String sex) {
    return switch (sex) {
      case "girl" -> AdministrativeGender.FEMALE;
      case "boy" -> AdministrativeGender.MALE;
      default -> AdministrativeGender.UNKNOWN;
    };
  }

  // The time goes with the date only where its zone was stated: FHIR has no time without one.
  private static DateType birth(String born) {
    DateType date = new DateType(born.substring(0, 10));
    if (born.matches(".*(Z|[+-]\\d\\d:\\d\\d)")) {
      ZonedDateTime moment = Fact.moment(born, null);
      DateTimeType time =
          new DateTimeType(
              Date.from(moment.toInstant()),
              TemporalPrecisionEnum.SECOND,
              TimeZone.getTimeZone(moment.getZone()));
      date.addExtension(new Extension(EXTENSIONS + "birthTime", time));
    }
    return date;
  }

  private static void mother(Baby baby, Patient patient) {
    if (baby.fact("mother-name").isEmpty()) {
      return;
    }
    Patient.ContactComponent mother = patient.addContact();
    mother.addRelationship(
        ObservationMaker.own("http://terminology.hl7.org/CodeSystem/v3-RoleCode", "MTH", "mother"));
    mother.getName().setText(FhirDocument.printable(baby.fact("mother-name").orElseThrow()));
  }

  static Practitioner signer(Signature signature) {
    Practitioner practitioner = named(signature.name());
    practitioner
        .addQualification()
        .setCode(new CodeableConcept().setText(FhirDocument.printable(signature.role())));
    return practitioner;
  }

  static Practitioner named(String name) {
    Practitioner practitioner = new Practitioner();
    practitioner.addName().setText(FhirDocument.printable(name));
    return practitioner;
  }

  /**
   * The examination as a meeting of the two.
   *
   * @param examiner null where nobody was named
   */
  static Encounter encounter(ExamRecord record, Reference patient, Reference examiner) {
    Encounter encounter = new Encounter();
    boolean over = record.phase() != Phase.LISTENING && record.phase() != Phase.PAUSED;
    encounter.setStatus(
        over ? Encounter.EncounterStatus.FINISHED : Encounter.EncounterStatus.INPROGRESS);
    // On a ward, in a clinic or at home: nobody is asked.
    Coding where = new Coding();
    where.addExtension(new Extension(ABSENT, new CodeType("unknown")));
    encounter.setClass_(where);
    encounter.setSubject(patient.copy());
    if (!record.entries().isEmpty()) {
      Period period = new Period();
      period.setStartElement(FhirDocument.moment(record.entries().get(0).at()));
      if (over) {
        period.setEndElement(
            FhirDocument.moment(record.entries().get(record.entries().size() - 1).at()));
      }
      encounter.setPeriod(period);
    }
    if (examiner != null) {
      encounter.addParticipant().setIndividual(examiner.copy());
    }
    return encounter;
  }
}
