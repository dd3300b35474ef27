package tiptoe.report.fhir;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.SortedSet;
import java.util.TreeMap;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.Coding;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Quantity;
import tiptoe.exam.Answer;
import tiptoe.finding.Bound;
import tiptoe.finding.Finding;
import tiptoe.finding.Source;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Value;

/** Reads back what a document says that the exporter wrote, as a system that receives it would. */
public final class FhirReader {
  private static final Map<String, Side> SIDES = Map.of("L", Side.LEFT, "R", Side.RIGHT);

  private final Protocol protocol;

  public FhirReader(Protocol protocol) {
    this.protocol = protocol;
  }

  /**
   * What the document says.
   *
   * @param answers those that stand, in its order; statement numbers are not kept in FHIR
   * @param others every other thing that it says as data, one a line
   */
  public record Contents(List<Answer> answers, SortedSet<String> others) {}

  /**
   * @throws IllegalArgumentException when it is no document that this package wrote
   */
  public Contents contents(String json) {
    try {
      Bundle bundle = FhirDocument.Contexts.R4.newJsonParser().parseResource(Bundle.class, json);
      return new Contents(answers(bundle), new OtherContents(bundle).lines());
    } catch (RuntimeException e) {
      // HAPI FHIR's parser meets damaged JSON with all sorts of runtime exceptions.
      throw new IllegalArgumentException(
          "expected a FHIR document of this program, found another (" + e.getMessage() + ")", e);
    }
  }

  private List<Answer> answers(Bundle bundle) {
    List<Answer> answers = new ArrayList<>();
    bundle.getEntry().stream()
        .map(Bundle.BundleEntryComponent::getResource)
        .filter(Observation.class::isInstance)
        .map(Observation.class::cast)
        .filter(FhirReader::stands)
        .forEach(
            observation ->
                coding(observation.getCode(), Codes.STEPS)
                    .ifPresent(step -> answers.add(answer(observation, step))));
    return answers;
  }

  static boolean stands(Observation one) {
    return one.getMeta().getTag(Codes.SETTLING, Codes.NOT_SETTLED) == null
        && one.getStatus() != Observation.ObservationStatus.REGISTERED;
  }

  private Answer answer(Observation observation, String step) {
    Map<String, String> details = new TreeMap<>();
    List<String> denied = new ArrayList<>();
    for (Observation.ObservationComponentComponent component : observation.getComponent()) {
      if (component.hasDataAbsentReason()) {
        continue;
      }
      String code = coding(component.getCode(), Codes.DETAILS).orElseThrow();
      if (code.equals(ObservationMaker.DENIED)) {
        denied.add(last(coding(component.getValueCodeableConcept(), Codes.VALUES).orElseThrow()));
      } else if (component.hasValueQuantity()) {
        details.put(last(code), text(component.getValueQuantity()));
      } else {
        details.put(last(code), component.getValueStringType().getValue());
      }
    }
    String value = null;
    tiptoe.finding.Quantity quantity = null;
    if (observation.hasDataAbsentReason()) {
      value = Value.NOT_EXAMINED;
      if (observation.getDataAbsentReason().hasText()) {
        details.put(ObservationMaker.REASON, observation.getDataAbsentReason().getText());
      }
    } else if (observation.hasValueQuantity()) {
      quantity =
          new tiptoe.finding.Quantity(
              observation.getValueQuantity().getValue().doubleValue(),
              protocol.step(step).measure().unit(),
              observation.getValueQuantity().hasComparator()
                  ? Bound.of(observation.getValueQuantity().getComparator().toCode())
                  : null);
    } else {
      value = last(coding(observation.getValueCodeableConcept(), Codes.VALUES).orElseThrow());
    }
    Side side = side(observation.getBodySite());
    boolean group = ObservationMaker.GROUP.equals(observation.getMethod().getText());
    return new Answer(
        new Finding(step, side, value, quantity, details, denied, group, Source.TYPED), 0);
  }

  static Side side(CodeableConcept site) {
    return coding(site, Codes.SIDES).map(code -> SIDES.get(code)).orElse(null);
  }

  private static String text(Quantity quantity) {
    return quantity.getValue().stripTrailingZeros().toPlainString();
  }

  static Optional<String> coding(CodeableConcept concept, String system) {
    return concept.getCoding().stream()
        .filter(coding -> system.equals(coding.getSystem()))
        .map(Coding::getCode)
        .filter(Objects::nonNull)
        .min(Comparator.naturalOrder());
  }

  static String last(String code) {
    return code.substring(code.indexOf('.') + 1);
  }
}
