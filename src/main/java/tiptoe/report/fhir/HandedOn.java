package tiptoe.report.fhir;

import java.util.Map;
import java.util.function.BiFunction;
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

  private static final Map<String, ConsentState> CONSENT =
      Map.of("given", ConsentState.ACTIVE, "declined", ConsentState.REJECTED);
  private static final Map<String, CommunicationStatus> TOLD =
      Map.of(
          "yes", CommunicationStatus.COMPLETED,
          "given", CommunicationStatus.COMPLETED,
          "not-yet", CommunicationStatus.PREPARATION,
          "due", CommunicationStatus.PREPARATION,
          "declined", CommunicationStatus.NOTDONE);
  private static final Map<String, ServiceRequestStatus> REQUESTED =
      Map.of(
          "made", ServiceRequestStatus.ACTIVE,
          "requested", ServiceRequestStatus.ACTIVE,
          "done", ServiceRequestStatus.COMPLETED,
          "declined", ServiceRequestStatus.REVOKED,
          "due", ServiceRequestStatus.DRAFT);

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
    Resource resource =
        fact.equals("consent")
            ? made(one, CONSENT, this::consent)
            : fact.startsWith("referral-") || fact.endsWith("-scan")
                ? made(one, REQUESTED, this::request)
                : made(one, TOLD, this::communication);
    return resource == null ? maker.fact(fact, one.value()) : resource;
  }

  private static <S> Resource made(
      Stated one, Map<String, S> states, BiFunction<Stated, S, Resource> maker) {
    S state = states.get(one.value());
    return state == null ? null : maker.apply(one, state);
  }

  private String said(Stated one) {
    return wording.words().stated(one.fact(), one.value());
  }

  private CodeableConcept code(Stated one) {
    return new CodeableConcept(maker.factCoding(one.fact()))
        .setText(wording.words().label(one.fact()));
  }

  private Consent consent(Stated one, ConsentState state) {
    Consent consent =
        new Consent()
            .setStatus(state)
            .setScope(new CodeableConcept(new Coding(SCOPES, "treatment", "Treatment")))
            .addCategory(code(one))
            .setPatient(patient.copy())
            .setPolicyRule(new CodeableConcept().setText(said(one)));
    if (one.at() != null) {
      consent.setDateTimeElement(FhirDocument.moment(one.at()));
    }
    wording
        .record()
        .baby()
        .fact("consent-by")
        .ifPresent(by -> consent.addPerformer().setDisplay(wording.words().fact("consent-by", by)));
    return consent;
  }

  private Communication communication(Stated one, CommunicationStatus status) {
    Communication communication =
        new Communication()
            .setStatus(status)
            .setTopic(code(one))
            .setSubject(patient.copy())
            .addRecipient(new Reference().setDisplay("parents"));
    communication.addPayload().setContent(FhirDocument.string(said(one)));
    if (status == CommunicationStatus.COMPLETED) {
      if (one.at() != null) {
        communication.setSentElement(FhirDocument.moment(one.at()));
      }
      if (one.by() != null) {
        communication.setSender(new Reference().setDisplay(FhirDocument.printable(one.by())));
      }
    }
    return communication;
  }

  private ServiceRequest request(Stated one, ServiceRequestStatus status) {
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
    request.addNote().setText(said(one));
    return request;
  }
}
