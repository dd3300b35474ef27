package tiptoe.report.fhir;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import tiptoe.files.Shipped;

/** The codes of the export: LOINC and UCUM where the table has them, our own systems otherwise. */
final class Codes {
  static final String LOINC = "http://loinc.org";
  static final String UCUM = "http://unitsofmeasure.org";
  static final String UUIDS = "urn:ietf:rfc:3986";

  /** Our own code systems: steps, their values, details, facts, rules, sides. */
  static final String STEPS = "urn:tiptoe:step";

  static final String VALUES = "urn:tiptoe:value";
  static final String DETAILS = "urn:tiptoe:detail";
  static final String FACTS = "urn:tiptoe:fact";
  static final String RULES = "urn:tiptoe:rule";
  static final String LEVELS = "urn:tiptoe:level";
  static final String SETTLING = "urn:tiptoe:settling";
  static final String NOT_SETTLED = "not-settled";
  static final String SIDES = "urn:tiptoe:side";

  static final Codes SHIPPED = read();

  /**
   * A coded measurement.
   *
   * @param codes LOINC
   * @param ucum the unit's UCUM code
   * @param profile name of the vital-signs profile; null where there is none
   */
  record Coded(List<String> codes, String ucum, String profile) {}

  private record Document(String code, String display) {}

  private record Table(
      Document document,
      Map<String, String> sections,
      Map<String, Coded> steps,
      Map<String, String> facts) {}

  private final Table table;

  private Codes(Table table) {
    this.table = table;
  }

  private static Codes read() {
    ObjectMapper yaml = new ObjectMapper(new YAMLFactory());
    return new Codes(Shipped.read(yaml, Codes.class, "codes.yaml", Table.class));
  }

  String document() {
    return table.document().code();
  }

  String documentDisplay() {
    return table.document().display();
  }

  String section(String region) {
    return table.sections().get(region);
  }

  Coded step(String id) {
    return table.steps().get(id);
  }

  String fact(String id) {
    return table.facts().get(id);
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
