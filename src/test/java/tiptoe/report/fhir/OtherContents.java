package tiptoe.report.fhir;

import java.util.Map;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.stream.Collectors;
import org.hl7.fhir.r4.model.BodyStructure;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Communication;
import org.hl7.fhir.r4.model.Composition;
import org.hl7.fhir.r4.model.Consent;
import org.hl7.fhir.r4.model.DetectedIssue;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Reference;
import org.hl7.fhir.r4.model.Resource;
import org.hl7.fhir.r4.model.ServiceRequest;
import org.hl7.fhir.r4.model.Type;
import tiptoe.protocol.Side;

/** What a document says beside answers: flags, plan, results, what is owed, what was handed on. */
final class OtherContents {
  private final Map<String, Resource> resources;
  private final SortedSet<String> lines = new TreeSet<>();

  OtherContents(Bundle bundle) {
    resources =
        bundle.getEntry().stream()
            .filter(Bundle.BundleEntryComponent::hasResource)
            .collect(
                Collectors.toMap(
                    Bundle.BundleEntryComponent::getFullUrl,
                    Bundle.BundleEntryComponent::getResource,
                    (first, last) -> last));
  }

  SortedSet<String> lines() {
    for (Resource resource : resources.values()) {
      if (resource instanceof Composition composition) {
        owed(composition);
      } else if (resource instanceof Observation observation) {
        observation(observation);
      } else if (resource instanceof DetectedIssue issue) {
        String level = FhirReader.coding(issue.getCode(), Codes.LEVELS).orElseThrow();
        lines.add("flag " + code(issue) + " " + level + " " + issue.getSeverity().toCode());
      } else if (resource instanceof ServiceRequest request) {
        request(request);
      } else if (resource instanceof Consent consent) {
        fact(
            FhirReader.coding(consent.getCategoryFirstRep(), Codes.FACTS).orElseThrow(),
            consent.getStatus().toCode());
      } else if (resource instanceof Communication communication) {
        fact(
            FhirReader.coding(communication.getTopic(), Codes.FACTS).orElseThrow(),
            communication.getStatus().toCode());
      }
    }
    return lines;
  }

  private static String code(DetectedIssue issue) {
    return FhirReader.coding(issue.getCode(), Codes.RULES).orElseThrow();
  }

  private void fact(String fact, String state) {
    lines.add("handed on " + fact + " " + state);
  }

  private void owed(Composition composition) {
    composition.getSection().stream()
        .filter(one -> FhirReader.coding(one.getCode(), Codes.SECTIONS).isPresent())
        .flatMap(one -> one.getEntry().stream())
        .forEach(entry -> owed((Observation) resources.get(entry.getReference())));
  }

  private void owed(Observation observation) {
    String unknown = absent(observation);
    FhirReader.coding(observation.getCode(), Codes.FACTS)
        .ifPresent(fact -> lines.add("need " + fact + " " + unknown));
    FhirReader.coding(observation.getCode(), Codes.STEPS)
        .ifPresent(step -> lines.add("owed " + step + " " + side(observation) + " " + unknown));
  }

  private static String absent(Observation observation) {
    return observation.getDataAbsentReason().getCodingFirstRep().getCode();
  }

  /** The side, which the coding and the structure must tell alike. */
  private Side side(Observation observation) {
    Side side = FhirReader.side(observation.getBodySite());
    if (observation.getBodySite().hasExtension()) {
      Reference to = (Reference) observation.getBodySite().getExtensionFirstRep().getValue();
      BodyStructure structure = (BodyStructure) resources.get(to.getReference());
      if (FhirReader.side(structure.getLocationQualifierFirstRep()) != side) {
        throw new IllegalArgumentException("expected one side, found two of " + structure);
      }
    }
    return side;
  }

  private void observation(Observation one) {
    FhirReader.coding(one.getCode(), Codes.STEPS)
        .ifPresent(
            step -> {
              one.getComponent().stream()
                  .filter(Observation.ObservationComponentComponent::hasDataAbsentReason)
                  .flatMap(part -> FhirReader.coding(part.getCode(), Codes.DETAILS).stream())
                  .forEach(detail -> lines.add("owed " + detail + " " + side(one)));
              if (FhirReader.stands(one)) {
                lines.add(
                    "said "
                        + step
                        + " "
                        + side(one)
                        + " "
                        + one.getEffectiveDateTimeType().getValue().toInstant()
                        + " "
                        + one.getInterpretationFirstRep().getCodingFirstRep().getCode());
              }
            });
    FhirReader.coding(one.getCode(), Codes.RESULTS).ifPresent(result -> result(result, one));
    FhirReader.coding(one.getCode(), Codes.PROGRAMME)
        .ifPresent(
            part -> {
              lines.add(
                  "programme "
                      + part
                      + " "
                      + (one.hasValue() ? outcome(one.getValue()) : absent(one))
                      + " owed "
                      + one.getHasMember().size());
              one.getComponent()
                  .forEach(
                      referral ->
                          lines.add(
                              "programme "
                                  + part
                                  + " "
                                  + FhirReader.coding(referral.getCode(), Codes.RULES).orElseThrow()
                                  + " "
                                  + dates(referral.getValue())));
            });
  }

  private static String outcome(Type value) {
    return FhirReader.last(
        FhirReader.coding((org.hl7.fhir.r4.model.CodeableConcept) value, Codes.OUTCOMES)
            .orElseThrow());
  }

  private static String dates(Type value) {
    return value instanceof Period period
        ? period.getStartElement().getValueAsString()
            + " to "
            + period.getEndElement().getValueAsString()
        : "null to null";
  }

  private void result(String result, Observation one) {
    String standard = FhirReader.coding(one.getMethod(), Codes.STANDARDS).orElse(null);
    String value =
        one.hasValueQuantity()
            ? Double.toString(one.getValueQuantity().getValue().doubleValue())
            : outcome(one.getValue());
    lines.add("result " + result + " " + standard + " " + value);
    for (Observation.ObservationComponentComponent part : one.getComponent()) {
      String name = FhirReader.coding(part.getCode(), Codes.RESULTS).orElseThrow();
      lines.add(
          "result "
              + result
              + " "
              + standard
              + " "
              + FhirReader.last(name)
              + " "
              + (part.hasValueQuantity()
                  ? part.getValueQuantity().getValue().doubleValue()
                      + " "
                      + part.getValueQuantity().getUnit()
                  : outcome(part.getValue())));
    }
  }

  private void request(ServiceRequest request) {
    String status = request.getStatus().toCode();
    FhirReader.coding(request.getCode(), Codes.FACTS).ifPresent(fact -> fact(fact, status));
    FhirReader.coding(request.getCode(), Codes.RULES)
        .ifPresent(
            item ->
                lines.add(
                    "plan "
                        + item
                        + " "
                        + (request.hasOccurrence()
                            ? dates(request.getOccurrence())
                            : "null to null")
                        + " "
                        + status
                        + " "
                        + (request.hasPriority() ? request.getPriority().toCode() : null)));
  }
}
