package tiptoe.report.fhir;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.hl7.fhir.r4.model.Coding;
import tiptoe.files.Shipped;
import tiptoe.protocol.Side;

/** The codes of the export: LOINC and UCUM where the table has them, our own systems otherwise. */
record Codes(
    Map<String, String> loinc,
    String document,
    String plan,
    Map<String, String> sections,
    Map<String, Coded> steps,
    Map<String, String> facts,
    List<Part> parts) {
  static final String LOINC = "http://loinc.org";
  static final String UCUM = "http://unitsofmeasure.org";
  static final String UUIDS = "urn:ietf:rfc:3986";

  /** HL7's own tables 0550 and 0495. */
  static final String PARTS = "http://terminology.hl7.org/CodeSystem/v2-0550";

  static final String SIDES = "http://terminology.hl7.org/CodeSystem/v2-0495";

  /** Our own code systems: steps, their values, details, facts, rules and what follows. */
  static final String STEPS = "urn:tiptoe:step";

  static final String VALUES = "urn:tiptoe:value";
  static final String DETAILS = "urn:tiptoe:detail";
  static final String FACTS = "urn:tiptoe:fact";
  static final String RULES = "urn:tiptoe:rule";
  static final String LEVELS = "urn:tiptoe:level";
  static final String SETTLING = "urn:tiptoe:settling";
  static final String NOT_SETTLED = "not-settled";
  static final String RESULTS = "urn:tiptoe:result";
  static final String OUTCOMES = "urn:tiptoe:outcome";
  static final String STANDARDS = "urn:tiptoe:standard";
  static final String PROGRAMME = "urn:tiptoe:programme";
  static final String SECTIONS = "urn:tiptoe:section";

  static final Codes SHIPPED = Shipped.yaml(Codes.class, "codes.yaml", Codes.class);

  /**
   * A coded measurement.
   *
   * @param codes LOINC
   * @param ucum the unit's UCUM code
   * @param profile name of the vital-signs profile; null where there is none
   */
  record Coded(List<String> codes, String ucum, String profile) {}

  record Part(String code, String display, List<String> steps) {}

  /** The kind of the document. */
  Coding ofDocument() {
    return loinc(document);
  }

  Coding ofPlan() {
    return loinc(plan);
  }

  Coding section(String region) {
    return loinc(sections.get(region));
  }

  /** What a step measures, with the value of a detail where that decides; null where unknown. */
  Coded step(String id, Collection<String> details) {
    return Stream.concat(Stream.of(id), details.stream().map(detail -> id + "." + detail))
        .map(steps::get)
        .filter(Objects::nonNull)
        .findFirst()
        .orElse(null);
  }

  /** The code of a fact about the baby; null where there is none. */
  Coding fact(String id) {
    return facts.containsKey(id) ? loinc(facts.get(id)) : null;
  }

  /** A code with the name that LOINC gives it. */
  Coding loinc(String code) {
    return new Coding(LOINC, code, loinc.get(code));
  }

  /** The part of the body that a step is about; empty where the table has none. */
  Optional<Coding> part(String step) {
    return parts.stream()
        .filter(part -> part.steps().contains(step))
        .findFirst()
        .map(part -> new Coding(PARTS, part.code(), part.display()));
  }

  static Coding side(Side side) {
    return side == Side.LEFT ? new Coding(SIDES, "L", "Left") : new Coding(SIDES, "R", "Right");
  }

  /** The system of ours for what a ward adds. */
  static String local(String system) {
    return system.replace("urn:tiptoe:", "urn:tiptoe:local:");
  }

  /** The UCUM code of a unit of the protocol. */
  static String ucum(String unit) {
    return switch (unit) {
      case "°C" -> "Cel";
      case "µmol/L" -> "umol/L";
      case "1" -> "1";
      default -> unit;
    };
  }

  /** The same id for the same thing of the same examination, always. */
  static String uuid(String examination, String thing) {
    byte[] name = (examination + "/" + thing).getBytes(java.nio.charset.StandardCharsets.UTF_8);
    return "urn:uuid:" + UUID.nameUUIDFromBytes(name);
  }
}
