package tiptoe.report.fhir;

import java.util.Comparator;
import java.util.List;
import org.hl7.fhir.r4.model.CodeSystem;
import org.hl7.fhir.r4.model.Enumerations.PublicationStatus;
import tiptoe.clinical.Level;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** Our own code systems as FHIR resources, made from the protocol. */
public final class CodeSystems {
  private CodeSystems() {}

  /** All of them. */
  public static List<CodeSystem> of(Protocol protocol) {
    CodeSystem steps = system(Codes.STEPS, "ExaminationStep");
    CodeSystem values = system(Codes.VALUES, "ExaminationValue");
    CodeSystem details = system(Codes.DETAILS, "ExaminationDetail");
    concept(details, ObservationMaker.DENIED, ObservationMaker.DENIED);
    protocol
        .steps()
        .forEach(
            step -> {
              concept(steps, step.id(), step.label());
              add(step, values, details);
            });
    CodeSystem facts = system(Codes.FACTS, "BabyFact");
    protocol
        .facts()
        .filter(fact -> fact.kind() != Fact.Kind.TEXT && fact.kind() != Fact.Kind.IDENTITY)
        .sorted(Comparator.comparing(Fact::id))
        .forEach(fact -> concept(facts, fact.id(), fact.label()));
    CodeSystem levels = system(Codes.LEVELS, "FlagLevel");
    for (Level level : Level.values()) {
      concept(levels, level.id(), level.id());
    }
    return List.of(steps, values, details, facts, levels);
  }

  /** All of them as a FHIR collection, the form in which they are published with the project. */
  public static String json(Protocol protocol) {
    org.hl7.fhir.r4.model.Bundle bundle = new org.hl7.fhir.r4.model.Bundle();
    bundle.setType(org.hl7.fhir.r4.model.Bundle.BundleType.COLLECTION);
    of(protocol)
        .forEach(
            system ->
                bundle
                    .addEntry()
                    .setFullUrl(Codes.uuid("code-systems", system.getUrl()))
                    .setResource(system));
    return FhirDocument.Contexts.R4
            .newJsonParser()
            .setPrettyPrint(true)
            .encodeResourceToString(bundle)
        + "\n";
  }

  private static void add(Step step, CodeSystem values, CodeSystem details) {
    for (Value value : step.values()) {
      concept(values, step.id() + "." + value.id(), value.label());
    }
    if (step.values().stream().anyMatch(Value::sided)) {
      concept(details, step.id() + "." + Detail.SIDE, Detail.SIDE);
    }
    for (Detail detail : step.details()) {
      concept(details, step.id() + "." + detail.id(), Labels.of(detail.id()));
    }
  }

  private static CodeSystem system(String url, String name) {
    CodeSystem system = new CodeSystem();
    system.setUrl(url);
    system.setName(name);
    system.setTitle("Tiptoe " + name);
    system.setStatus(PublicationStatus.ACTIVE);
    system.setContent(CodeSystem.CodeSystemContentMode.COMPLETE);
    system.setCaseSensitive(true);
    return system;
  }

  private static void concept(CodeSystem system, String code, String label) {
    system.addConcept().setCode(code).setDisplay(label);
  }
}
