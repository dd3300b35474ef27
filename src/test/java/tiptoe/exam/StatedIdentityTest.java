package tiptoe.exam;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.protocol.Protocol;

class StatedIdentityTest {
  private static final Protocol PROTOCOL = Protocol.standard();

  /** The parts of the example of HL7 FHIR R4 (4.0.1), patient-example.json, that are read. */
  private static final String HL7_EXAMPLE =
      """
      {"resourceType": "Patient", "id": "example",
       "identifier": [{"use": "usual",
         "type": {"coding": [{"system": "http://terminology.hl7.org/CodeSystem/v2-0203", "code": "MR"}]},
         "system": "urn:oid:1.2.36.146.595.217.0.1", "value": "12345"}],
       "name": [{"use": "official", "family": "Chalmers", "given": ["Peter", "James"]},
                {"use": "usual", "given": ["Jim"]}],
       "gender": "male", "birthDate": "1974-12-25",
       "_birthDate": {"extension": [{
         "url": "http://hl7.org/fhir/StructureDefinition/patient-birthTime",
         "valueDateTime": "1974-12-25T14:35:45-05:00"}]},
       "deceasedBoolean": false}
      """;

  @Test
  void aFhirPatientSaysWhoTheBabyIs() {
    assertEquals(
        Map.of(
            "name", "Peter James Chalmers",
            "record-number", "12345",
            "born-at", "1974-12-25T14:35:45-05:00",
            "sex", "boy"),
        StatedIdentity.parse(HL7_EXAMPLE, PROTOCOL).facts());
  }

  @Test
  void aFhirPatientMayNameThePlaceTheMotherAndATwin() {
    String json =
        """
        {"resourceType": "Patient", "name": [{"text": "Ada Wren"}], "birthDate": "2026-03-01",
         "multipleBirthInteger": 2,
         "extension": [{"url": "http://hl7.org/fhir/StructureDefinition/patient-birthPlace",
           "valueAddress": {"city": "Newtown"}}],
         "contact": [{"relationship": [{"coding": [{"code": "MTH"}]}], "name": {"text": "Bea Wren"}}]}
        """;
    StatedIdentity stated = StatedIdentity.parse(json, PROTOCOL);
    assertEquals(
        Map.of(
            "name", "Ada Wren",
            "place-of-birth", "Newtown",
            "multiple", "yes",
            "mother-name", "Bea Wren"),
        stated.facts());
    assertEquals(
        List.of("the time of birth is not in it, so the age is not counted"), stated.remarks());
  }

  @Test
  void anObjectOfFactsSaysWhoTheBabyIs() {
    assertEquals(
        Map.of("name", "Ada Wren", "born-at", "2026-03-01T04:30", "gestation", "39+4"),
        StatedIdentity.parse(
                "{\"name\": \" Ada  Wren \", \"born-at\": \"2026-03-01 04:30\", \"gestation\":"
                    + " \"39+4\"}",
                PROTOCOL)
            .facts());
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "K1234567 | {record-number=K1234567}",
        "943 476 5919 | {}",
        "name: Ada Wren | {name=Ada Wren}",
        "Name: Ada Wren; record number: 12/345678 | {name=Ada Wren, record-number=12/345678}",
        "born: 2026-03-01 04:30 | {born-at=2026-03-01T04:30}",
        "date of birth: 2026-03-01 | {}",
        "mother’s name: Bea Wren; mother's number: M77 | {mother-name=Bea Wren, mother-number=M77}",
        "weight 3420 | {}",
        "3420 | {}",
      })
  void aLineSaysWhoTheBabyIs(String line, String facts) {
    StatedIdentity stated = StatedIdentity.parse(line, PROTOCOL);
    assertEquals(facts, stated.facts().toString());
    assertEquals(facts.equals("{}"), !stated.problems().isEmpty());
  }

  @ParameterizedTest
  @ValueSource(strings = {"left barlow positive", "K1234567", "skin: pink", "3420"})
  void aLineThatMayBeAFindingIsNone(String line) {
    assertEquals(Optional.empty(), StatedIdentity.ofLine(line, PROTOCOL));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"name\": \"Ada\\nWren\"}",
        "{\"name\": \"\\u202eAda\"}",
        "{\"name\": \"\"}",
        "{\"name\": {\"given\": \"Ada\"}}",
        "{\"sex\": \"female\"}",
        "{\"shoe-size\": \"3\"}",
        "{\"name\": \"Ada\", \"name\": \"Bea\"}",
        "{\"resourceType\": \"Observation\"}",
        "{\"resourceType\": \"Patient\"}",
        "{}",
        "[]",
        "{\"name\": \"Ada\"",
        "born: yesterday",
      })
  void whatCannotBeMeantIsRefusedAsAWhole(String text) {
    StatedIdentity stated = StatedIdentity.parse(text, PROTOCOL);
    assertEquals(Map.of(), stated.facts());
    assertTrue(stated.problems().size() > 0);
    stated.problems().forEach(problem -> assertTrue(problem.startsWith("expected "), problem));
  }

  @Test
  void aNameHasAnEnd() {
    String name = "A".repeat(81);
    assertEquals(
        List.of(
            ("expected one line of 1 to 80 printable letters for name, found " + name)
                    .substring(0, 120)
                + " …"),
        StatedIdentity.parse("{\"name\": \"" + name + "\"}", PROTOCOL).problems());
  }
}
