package tiptoe.exam;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.StreamSupport;
import tiptoe.protocol.Protocol;

/**
 * Who a baby is, as it is typed, scanned by a reader that types, or read from a file.
 *
 * <pre>
 * text   = json | line | number .
 * json   = a FHIR R4 Patient, or an object of facts as {@link Baby} has them, such as
 *          {"name": "Ada Wren", "record-number": "K123456", "born-at": "2026-03-01T04:30"} .
 * line   = entry { ";" entry } .
 * entry  = label ":" value .
 * label  = "name" | "record number" | "born" | "born at" | "place of birth" | "mother's name"
 *        | "mother's number" .
 * number = letters, figures, "-", "/" and ".", with five figures or more, and no space .
 * </pre>
 *
 * @param facts fact id to value, each as the protocol takes it
 * @param problems what cannot be meant; where there are any, nothing of it is to be used
 * @param remarks what was left out, for people
 */
public record StatedIdentity(
    Map<String, String> facts, List<String> problems, List<String> remarks) {
  private static final ObjectMapper JSON =
      JsonMapper.builder(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder().maxNestingDepth(100).build())
                  .build())
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();
  private static final Map<String, String> LABELS =
      Map.of(
          "name", "name",
          "record number", "record-number",
          "born", "born-at",
          "born at", "born-at",
          "place of birth", "place-of-birth",
          "mother's name", "mother-name",
          "mother's number", "mother-number");
  private static final Pattern ENTRY = Pattern.compile("\\s*([A-Za-z'’ ]+?)\\s*:\\s*(.*?)\\s*");
  private static final Pattern NUMBER =
      Pattern.compile("(?=(?:[^0-9]*[0-9]){5})[A-Za-z0-9][A-Za-z0-9./-]{4,39}");
  private static final Pattern DATE_AND_TIME =
      Pattern.compile("(\\d{4}-\\d\\d-\\d\\d)[ T]+(?:at )?(\\d\\d:\\d\\d.*)");
  private static final String EXTENSIONS = "http://hl7.org/fhir/StructureDefinition/patient-";

  public StatedIdentity {
    facts = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(facts));
    problems = List.copyOf(problems);
    remarks = List.copyOf(remarks);
  }

  /**
   * Reads the text of a file or a line that was asked for.
   *
   * @return what it states; with a problem where it is none of the forms
   */
  public static StatedIdentity parse(String text, Protocol protocol) {
    return ofLine(text, protocol)
        .orElseGet(
            () -> {
              String number = text.strip();
              return NUMBER.matcher(number).matches()
                  ? checked(Map.of("record-number", number), List.of(), protocol)
                  : wrong("expected who the baby is, found " + shortened(number));
            });
  }

  /**
   * Reads a line that may be something else: without a label a number is none.
   *
   * @return empty where it has another form
   */
  public static Optional<StatedIdentity> ofLine(String text, Protocol protocol) {
    if (text.stripLeading().startsWith("{")) {
      return Optional.of(json(text, protocol));
    }
    Map<String, String> facts = new LinkedHashMap<>();
    for (String part : text.split(";")) {
      Matcher entry = ENTRY.matcher(part);
      String fact =
          entry.matches()
              ? LABELS.get(entry.group(1).toLowerCase(java.util.Locale.ROOT).replace('’', '\''))
              : null;
      if (fact == null) {
        return Optional.empty();
      }
      facts.put(fact, entry.group(2));
    }
    return Optional.of(checked(facts, List.of(), protocol));
  }

  private static StatedIdentity json(String text, Protocol protocol) {
    try {
      JsonNode read = JSON.readTree(text);
      return read.path("resourceType").isMissingNode()
          ? own(read, protocol)
          : new FhirPatient(read).stated(protocol);
    } catch (JsonProcessingException e) {
      String where = e.getLocation() == null ? "" : " in line " + e.getLocation().getLineNr();
      String what = e.getOriginalMessage().lines().findFirst().orElse("something else");
      return wrong("expected JSON, found" + where + ": " + shortened(what));
    }
  }

  private static StatedIdentity own(JsonNode read, Protocol protocol) {
    Map<String, String> facts = new LinkedHashMap<>();
    List<String> problems = new ArrayList<>();
    for (Map.Entry<String, JsonNode> entry : read.properties()) {
      if (entry.getValue().isValueNode() && !entry.getValue().isNull()) {
        facts.put(entry.getKey(), entry.getValue().asText());
      } else {
        problems.add("expected text for " + shortened(entry.getKey()));
      }
    }
    return problems.isEmpty()
        ? checked(facts, List.of(), protocol)
        : new StatedIdentity(Map.of(), problems, List.of());
  }

  private static StatedIdentity checked(
      Map<String, String> stated, List<String> remarks, Protocol protocol) {
    Map<String, String> facts = new LinkedHashMap<>();
    List<String> problems = new ArrayList<>();
    stated.forEach(
        (fact, typed) -> {
          String value = value(fact, typed);
          protocol.problem(fact, value).map(StatedIdentity::shortened).ifPresent(problems::add);
          facts.put(fact, value);
        });
    if (facts.isEmpty()) {
      problems.add("expected who the baby is, found nothing of it");
    }
    return problems.isEmpty()
        ? new StatedIdentity(facts, List.of(), remarks)
        : new StatedIdentity(Map.of(), problems, remarks);
  }

  private static String value(String fact, String typed) {
    String value = typed.strip().replaceAll("[ \\t\\u00A0]+", " ");
    Matcher moment = DATE_AND_TIME.matcher(value);
    return fact.equals("born-at") && moment.matches()
        ? moment.group(1) + "T" + moment.group(2).replace(" ", "")
        : value;
  }

  private static StatedIdentity wrong(String problem) {
    return new StatedIdentity(Map.of(), List.of(problem), List.of());
  }

  private static String shortened(String text) {
    return text.length() <= 120 ? text : text.substring(0, 120) + " …";
  }

  /** The Patient resource of HL7 FHIR R4 (4.0.1), as far as it says who a newborn baby is. */
  private record FhirPatient(JsonNode patient) {
    StatedIdentity stated(Protocol protocol) {
      if (!patient.path("resourceType").asText().equals("Patient")) {
        return wrong(
            "expected a Patient, found " + shortened(patient.path("resourceType").asText()));
      }
      Map<String, String> facts = new LinkedHashMap<>();
      List<String> remarks = new ArrayList<>();
      put(facts, "name", name(patient.path("name")));
      put(facts, "record-number", recordNumber());
      String moment =
          extension(patient.path("_birthDate"), "birthTime").path("valueDateTime").asText("");
      put(facts, "born-at", moment);
      if (moment.isEmpty() && patient.has("birthDate")) {
        remarks.add("the time of birth is not in it, so the age is not counted");
      }
      JsonNode place = extension(patient, "birthPlace").path("valueAddress");
      put(facts, "place-of-birth", place.path("text").asText(place.path("city").asText("")));
      put(facts, "sex", sex());
      put(facts, "multiple", multiple());
      put(facts, "mother-name", name(mother().path("name")));
      return checked(facts, remarks, protocol);
    }

    private static void put(Map<String, String> facts, String fact, String value) {
      if (!value.isBlank()) {
        facts.put(fact, value);
      }
    }

    private static String name(JsonNode names) {
      JsonNode name = names.isArray() ? names.path(0) : names;
      if (name.hasNonNull("text")) {
        return name.path("text").asText();
      }
      String given =
          StreamSupport.stream(name.path("given").spliterator(), false)
              .map(JsonNode::asText)
              .collect(Collectors.joining(" "));
      return (given + " " + name.path("family").asText("")).strip();
    }

    // The medical record number where one is marked as such (HL7 table 0203: MR), else the first.
    private String recordNumber() {
      for (JsonNode identifier : patient.path("identifier")) {
        for (JsonNode coding : identifier.path("type").path("coding")) {
          if (coding.path("code").asText().equals("MR")) {
            return identifier.path("value").asText("");
          }
        }
      }
      return patient.path("identifier").path(0).path("value").asText("");
    }

    private static JsonNode extension(JsonNode of, String name) {
      for (JsonNode extension : of.path("extension")) {
        if (extension.path("url").asText().equals(EXTENSIONS + name)) {
          return extension;
        }
      }
      return of.path("extension").path(-1);
    }

    private String sex() {
      return switch (patient.path("gender").asText("")) {
        case "female" -> "girl";
        case "male" -> "boy";
        case "other" -> "undetermined";
        default -> "";
      };
    }

    private String multiple() {
      if (patient.path("multipleBirthInteger").isInt()) {
        return "yes";
      }
      JsonNode multiple = patient.path("multipleBirthBoolean");
      return multiple.isBoolean() ? multiple.asBoolean() ? "yes" : "no" : "";
    }

    // HL7 table RoleCode: MTH is the mother.
    private JsonNode mother() {
      for (JsonNode contact : patient.path("contact")) {
        for (JsonNode relationship : contact.path("relationship")) {
          for (JsonNode coding : relationship.path("coding")) {
            if (coding.path("code").asText().equals("MTH")) {
              return contact;
            }
          }
        }
      }
      return patient.path("contact").path(-1);
    }
  }

  /** States it in an examination, which may have been of somebody else before. */
  public static void state(Map<String, String> baby, Examination examination) throws IOException {
    for (String fact : List.of("record-number", "name")) {
      String before = examination.record().baby().fact(fact).orElse(null);
      String now = baby.get(fact);
      if (before != null && now != null && !before.equals(now)) {
        throw new IOException(
            "this examination is of %s: %s, not of %s"
                .formatted(fact.replace('-', ' '), before, now));
      }
    }
    String author = examination.record().opened().author();
    baby.forEach((fact, value) -> examination.context(fact, value, author));
  }
}
