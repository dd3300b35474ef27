package tiptoe.report.fhir;

import java.util.Optional;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Communication;
import org.hl7.fhir.r4.model.Communication.CommunicationStatus;
import org.hl7.fhir.r4.model.Composition;
import org.hl7.fhir.r4.model.Consent;
import org.hl7.fhir.r4.model.Consent.ConsentState;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestIntent;
import org.hl7.fhir.r4.model.ServiceRequest.ServiceRequestStatus;
import tiptoe.exam.Handover;
import tiptoe.exam.Stated;
import tiptoe.wording.RecordWording;

/**
 * What was handed on, as what R4 has for it: consent as a Consent, what parents were told or given
 * as a Communication, a referral or scan as a ServiceRequest. How consent was given and by whom
 * also stand as facts.
 */
record HandedOn(
    FhirDocument document, ObservationMaker maker, Reference patient, RecordWording wording) {
  private static final String SCOPES = "http://terminology.hl7.org/CodeSystem/consentscope";

  void add(Composition composition) {
    if (wording.handover().isEmpty()) {
      return;
    }
    Composition.SectionComponent section = composition.addSection().setTitle("Handed on");
    section.setText(FhirDocument.narrative(wording.handover()));
    Handover.of(wording.record())
        .stated()
        .values()
        .forEach(one -> section.addEntry(document.add("handed-on/" + one.fact(), of(one))));
  }

  private Resource of(Stated one) {
    String fact = one.fact();
    Optional<? extends Resource> resource =
        fact.equals("consent")
            ? consent(one)
            : fact.startsWith("referral-") || fact.endsWith("-scan")
                ? request(one)
                : communication(one);
    return resource.isPresent() ? resource.get() : maker.fact(fact, one.value());
  }

  private CodeableConcept code(Stated one) {
    return new CodeableConcept(maker.factCoding(one.fact()))
        .setText(wording.words().label(one.fact()));
  }

  private Optional<Consent> consent(Stated one) {
    ConsentState state =
        switch (one.value()) {
          case "given" -> ConsentState.ACTIVE;
          case "declined" -> ConsentState.REJECTED;
          default -> null;
        };
    if (state == null) {
      return Optional.empty();
    }
    Consent consent =
        new Consent()
            .setStatus(state)
            .setScope(new CodeableConcept(new Coding(SCOPES, "treatment", "Treatment")))
            .addCategory(code(one))
            .setPatient(patient.copy())
            .setPolicyRule(
                new CodeableConcept().setText(wording.words().stated(one.fact(), one.value())));
    if (one.at() != null) {
      consent.setDateTimeElement(FhirDocument.moment(one.at()));
    }
    wording
        .record()
        .baby()
        .fact("consent-by")
        .ifPresent(by -> consent.addPerformer().setDisplay(wording.words().fact("consent-by", by)));
    return Optional.of(consent);
  }

  private Optional<Communication> communication(Stated one) {
    CommunicationStatus status =
        switch (one.value()) {
          case "yes", "given" -> CommunicationStatus.COMPLETED;
          case "not-yet", "due" -> CommunicationStatus.PREPARATION;
          case "declined" -> CommunicationStatus.NOTDONE;
          default -> null;
        };
    if (status == null) {
      return Optional.empty();
    }
    Communication communication =
        new Communication()
            .setStatus(status)
            .setTopic(code(one))
            .setSubject(patient.copy())
            .addRecipient(new Reference().setDisplay("parents"));
    communication
        .addPayload()
        .setContent(FhirDocument.string(wording.words().stated(one.fact(), one.value())));
    if (status == CommunicationStatus.COMPLETED) {
      if (one.at() != null) {
        communication.setSentElement(FhirDocument.moment(one.at()));
      }
      if (one.by() != null) {
        communication.setSender(new Reference().setDisplay(FhirDocument.printable(one.by())));
      }
    }
    return Optional.of(communication);
  }

  private Optional<ServiceRequest> request(Stated one) {
    ServiceRequestStatus status =
        switch (one.value()) {
          case "made", "requested" -> ServiceRequestStatus.ACTIVE;
          case "done" -> ServiceRequestStatus.COMPLETED;
          case "declined" -> ServiceRequestStatus.REVOKED;
          case "due" -> ServiceRequestStatus.DRAFT;
          default -> null;
        };
    if (status == null) {
      return Optional.empty();
    }
    boolean ordered =
        status == ServiceRequestStatus.ACTIVE || status == ServiceRequestStatus.COMPLETED;
    ServiceRequest request =
        new ServiceRequest()
            .setStatus(status)
            .setIntent(ordered ? ServiceRequestIntent.ORDER : ServiceRequestIntent.PROPOSAL)
            .setCode(code(one))
            .setSubject(patient.copy());
    if (one.at() != null) {
      request.setAuthoredOnElement(FhirDocument.moment(one.at()));
    }
    if (one.by() != null) {
      request.setRequester(new Reference().setDisplay(FhirDocument.printable(one.by())));
    }
    request.addNote().setText(wording.words().stated(one.fact(), one.value()));
    return Optional.of(request);
  }
}
