package tiptoe.protocol;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The file of a ward: what it adds, and that a mistake in it is told by its line. */
class LocalProtocolTest {
  private static final String HEAD = "name: Ward 7\nversion: 3\n";

  private static Protocol with(String rest) {
    return Protocol.with(LocalProtocol.parse("ward.yaml", HEAD + rest, Protocol.standard()));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      value = {
        "steps: [{step: barlow, region: hips, normal: [fine]}] | line 3: expected an id of its own,"
            + " found barlow, which is one of ours",
        "steps: [{step: sex, region: hips, normal: [fine]}] | line 3: expected an id of its own,"
            + " found sex, which is one of ours",
        "steps: [{step: Lobe, region: ears, normal: [whole]}] | line 3: expected an id of its own"
            + " such as ear-lobe, found Lobe",
        "steps: [{step: lobe, region: tail, normal: [whole]}] | found tail",
        "steps: [{step: lobe, region: ears}] | line 3: expected normal, found none",
        "steps: [{step: lobe, region: ears, normal: []}] | line 3: expected a normal value, found"
            + " none in lobe",
        "steps: [{step: lobe, region: ears, normal: [whole], abnormal: [cleft]}] | line 3: expected"
            + " entries such as name: Ward 7, found a list",
        "steps: [{step: lobe, region: ears, normal: [whole], abnormal: {cleft: {action: look}}}] |"
            + " line 3: expected level, found none",
        "steps: [{step: lobe, region: ears, normal: [whole], abnormal: {cleft: {level: urgent}}}] |"
            + " line 3: expected action, found none",
        "steps: [{step: lobe, region: ears, normal: [whole], abnormal: {cleft: {level: soon,"
            + " action: look}}}] | line 3: expected a level (emergency, urgent, arrange or note),"
            + " found soon",
        "steps: [{step: lobe, region: ears, normal: [not-examined]}] | found not-examined",
        "steps: [{step: lobe, region: ears, normal: [whole], measure: {}}] | found measure",
        "steps: [{step: lobe, region: ears, normal: [whole], sided: perhaps}] | line 3: expected"
            + " yes or no, found perhaps",
        "steps: [{step: lobe, region: ears, normal: [whole], words: {whole: [Whole!]}}] | expected"
            + " up to eight spoken words of small letters for lobe, found Whole!",
        "wordings: [{step: tail, value: long, say: [a long tail]}] | line 3: expected the id of a"
            + " step of ours, found tail",
        "wordings: [{step: clavicle, value: crackle, say: [it crackles]}] | line 3: expected"
            + " intact, crepitus, step-off, swelling, fracture, found crackle",
        "wordings: [{step: clavicle, value: crepitus, say: [grating]}] | line 3: expected two words"
            + " or more, found grating",
        "wordings: [{step: clavicle, value: crepitus, say: [it grates, it grates]}] | found it"
            + " grates",
        "wordings: [{step: clavicle, value: crepitus, say: [left bone grates]}] | line 3: expected"
            + " words without a side, which is understood around them, found left bone grates",
        "key-steps: [tail] | line 3: expected the id of a step of ours, found tail",
        "remarks: {barlow: [once]} | line 3: expected text, found a list",
        "key-steps: *more | line 3: expected YAML",
        "colour: blue | line 3: expected one of key-steps, name, remarks, steps, version, wordings,"
            + " found colour",
        "name: again | line 3: expected each entry once, found name again",
      })
  void aMistakeIsToldByItsLine(String yaml, String problem) {
    Exception told = assertThrows(IllegalArgumentException.class, () -> with(yaml));
    assertTrue(told.getMessage().startsWith("ward.yaml line 3: "), told.getMessage());
    assertTrue(told.getMessage().contains(problem), told.getMessage());
  }

  @Test
  void addsAndTakesNothingAway() {
    Protocol ours = Protocol.standard();
    Protocol ward =
        with(
            """
            steps: [{step: ear-lobe, region: ears, sided: yes, key: yes, normal: [whole]}]
            key-steps: [skin]
            remarks: {barlow: only once}
            """);
    assertEquals(ours.steps().count() + 1, ward.steps().count());
    assertTrue(ward.step("ear-lobe").key() && ward.step("ear-lobe").sided());
    assertTrue(ward.step("skin").key() && !ours.step("skin").key());
    assertTrue(ward.step("barlow").reminder().endsWith("; only once"));
    assertEquals(ours.step("moro"), ward.step("moro"));
    assertTrue(ward.local().orElseThrow().title().matches("Ward 7 3 \\([0-9a-f]{12}\\)"));
  }

  @Test
  void aRecordIsReadThoughAStepHasBecomeOneOfOurs() {
    Protocol kept =
        Protocol.recorded(
            HEAD
                + """
                steps:
                - {step: barlow, region: hips, normal: [fine]}
                - {step: ear-lobe, region: ears, normal: [whole]}
                """);
    assertEquals(Protocol.standard().step("barlow"), kept.step("barlow"));
    assertTrue(kept.find("ear-lobe").isPresent());
    assertEquals(Protocol.standard().steps().count(), Protocol.recorded("[").steps().count());
  }
}
