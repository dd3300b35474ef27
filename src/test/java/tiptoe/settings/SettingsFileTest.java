package tiptoe.settings;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.Chars;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SettingsFileTest {
  private static List<String> problems(String yaml) {
    return SettingsFile.parse("tiptoe.yaml", yaml).problems().stream()
        .map(Object::toString)
        .toList();
  }

  @Test
  void readsEverySetting() {
    var outcome =
        SettingsFile.parse(
            "tiptoe.yaml",
            """
            rules:
              saturation-screen: 2011
              hip-ultrasound: aap
              jaundice: aap-2022
              hypoglycaemia: aap-2011
              size-standard: who
            units: {weight: lb, length: in, temperature: fahrenheit}
            spelling: american
            keep-audio: never
            tones: off
            tone-volume: soft
            weights: stock
            spoken-answers: questions
            synthesiser: speak --rate 1.2 {text}
            whom-to-call: "midwives of Newtown, 01234 567890"
            protocol: {local: ward-7.yaml}
            who: {name: "Rowan Reed", role: registrar}
            """);
    assertEquals(List.of(), outcome.problems());
    for (Setting setting : Setting.values()) {
      String wanted =
          switch (setting) {
            case SYNTHESISER -> "speak --rate 1.2 {text}";
            case WHOM_TO_CALL -> "midwives of Newtown, 01234 567890";
            case LOCAL_PROTOCOL -> "ward-7.yaml";
            case WHO_NAME -> "Rowan Reed";
            case WHO_ROLE -> "registrar";
            default -> setting.choices().get(1);
          };
      assertEquals(wanted, outcome.settings().get(setting), setting.path());
    }
  }

  @Test
  void aProgrammeIsAlsoReadByTheNameItHadBefore() {
    for (String yaml : List.of("rules: {hip-ultrasound: aap}", "rules: {hip-ultrasound: us}")) {
      Settings settings = SettingsFile.parse("tiptoe.yaml", yaml).settings();
      assertEquals("us", settings.get(Setting.HIP_ULTRASOUND), yaml);
      assertTrue(settings.is(Setting.HIP_ULTRASOUND, "aap"), yaml);
    }
    var before = SettingsFile.parse("tiptoe.yaml", "rules: {hip-ultrasound: nipe}");
    assertEquals(List.of(), before.problems());
    assertEquals(Settings.DEFAULT, before.settings());
  }

  @Test
  void whoWorksHereIsKeptAndAllElseStays(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("new/tiptoe.yaml");
    SettingsFile.remember(file, "Ada \"A\" Quill: midwife", "");
    assertEquals(
        "who: {name: \"Ada \\\"A\\\" Quill: midwife\", role: \"\"}\n", Files.readString(file));
    Files.writeString(file, "who:\n  name: x\n\n# mine\ntones: off\n");
    SettingsFile.remember(file, "Rowan Reed", "registrar");
    assertEquals(
        "# mine\ntones: off\nwho: {name: \"Rowan Reed\", role: \"registrar\"}\n",
        Files.readString(file));
    Settings read = SettingsFile.read(file).settings();
    assertEquals(read, SettingsFile.parse("again", SettingsFile.text(read)).settings());
    Files.writeString(file, "tone: off\n");
    assertThrows(IOException.class, () -> SettingsFile.remember(file, "Rowan Reed", ""));
    assertEquals("tone: off\n", Files.readString(file));
  }

  @Test
  void whatIsNotSetIsTheDefault() {
    for (String yaml : List.of("", "# nothing\n", "---\n", "rules:\n", "{}")) {
      var outcome = SettingsFile.parse("tiptoe.yaml", yaml);
      assertEquals(Settings.DEFAULT, outcome.settings());
      assertEquals(List.of(), outcome.problems(), yaml);
    }
  }

  @Test
  void theTemplateIsTheDefaults() {
    var outcome = SettingsFile.parse("tiptoe.yaml", SettingsFile.text(Settings.DEFAULT));
    assertEquals(List.of(), outcome.problems());
    assertEquals(Settings.DEFAULT, outcome.settings());
    for (Setting setting : Setting.values()) {
      assertTrue(
          SettingsFile.text(Settings.DEFAULT).contains(setting.key() + ": "), setting.path());
    }
  }

  @Test
  void theTemplateExplainsEachSetting() {
    assertTrue(
        SettingsFile.text(Settings.DEFAULT)
            .startsWith(
                """
                # Settings of Tiptoe. What is left out is the first of its choices.

                rules:
                  # pulse-oximetry screen: AAP 2025 (both limbs, one repeat), 2011 (either limb, two repeats) or UK (both limbs within 2 %, one repeat, in the first day)
                  # 2025 or 2011 or uk
                  saturation-screen: 2025
                  # hip ultrasound for stable hips at risk: uk, at 4-6 weeks (NHS England, NIPE screening programme handbook, 2024), or us, from 6 weeks (AAP, Pediatrics 2016;138:e20163107)
                """));
    assertTrue(
        SettingsFile.text(Settings.DEFAULT)
            .endsWith(
                """
                  temperature: celsius

                # spelling of what is shown
                # british or american
                spelling: british

                # how long the sound of an examination is kept
                # until-signed or never or always
                keep-audio: until-signed

                # short tones when a finding is recorded or a question is open
                # on or off
                tones: on

                # how loud the tones are
                # normal or soft or loud
                tone-volume: normal

                # weights of the speech model; adapted hears better through crying, stock is as published
                # adapted or stock
                weights: adapted

                # what a voice says: questions and what is asked for, or results too
                # off or questions or all
                spoken-answers: off

                # the command that speaks: the text is its input, or its argument {text}; it plays it, or writes WAV to its output
                # espeak-ng --stdin --stdout
                synthesiser: espeak-ng --stdin --stdout

                # whom parents are told to call, on the page for them
                whom-to-call: ""

                protocol:
                  # a file of the ward's own steps, words, key steps and remarks, beside this one
                  local: ""

                who:
                  # who examines, reviews and signs here, where --as does not say it
                  name: ""
                  # in which role, where --role does not say it
                  role: ""
                """));
  }

  @Test
  void writesSettingsThatReadTheSame() {
    Settings changed = Settings.DEFAULT.with(Setting.TONES, "off").with(Setting.LENGTH_UNIT, "in");
    assertEquals(changed, SettingsFile.parse("tiptoe.yaml", SettingsFile.text(changed)).settings());
    assertTrue(
        SettingsFile.text(changed)
            .contains(
                """
                # short tones when a finding is recorded or a question is open
                # on or off
                tones: off
                """));
  }

  @Test
  void refusesAnUnknownKeyWithItsLine() {
    assertEquals(
        List.of(
            "tiptoe.yaml line 2: expected one of rules.saturation-screen, rules.hip-ultrasound,"
                + " rules.jaundice, rules.hypoglycaemia, rules.size-standard, found rules.hips",
            "tiptoe.yaml line 3: expected one of rules, units, spelling, keep-audio, tones,"
                + " tone-volume, weights, spoken-answers, synthesiser, whom-to-call, protocol, who,"
                + " found"
                + " tone"),
        problems("rules:\n  hips: nipe\ntone: on\n"));
  }

  @Test
  void refusesAnUnknownChoiceWithItsLineAndKeepsTheDefault() {
    var outcome = SettingsFile.parse("tiptoe.yaml", "\nrules:\n  saturation-screen: 2020\n");
    assertEquals(
        "tiptoe.yaml line 3: expected 2025 or 2011 or uk for rules.saturation-screen, found 2020",
        outcome.problems().get(0).toString());
    assertEquals("2025", outcome.settings().get(Setting.SATURATION_SCREEN));
  }

  @Test
  void refusesWhatHasTheWrongShape() {
    assertEquals(
        List.of("tiptoe.yaml line 1: expected on or off for tones, found a list"),
        problems("tones: [on]\n"));
    assertEquals(
        List.of("tiptoe.yaml line 1: expected on or off for tones, found nothing"),
        problems("tones:\n"));
    assertEquals(
        List.of("tiptoe.yaml line 1: expected settings below units, found metric"),
        problems("units: metric\n"));
    assertEquals(
        List.of("tiptoe.yaml line 1: expected settings such as tones: off, found a list"),
        problems("- tones\n"));
    assertEquals(
        List.of("tiptoe.yaml line 3: expected one document, found a second"),
        problems("tones: on\n---\nspelling: american\n"));
  }

  @Test
  void refusesASettingThatIsThereTwice() {
    assertEquals(
        List.of("tiptoe.yaml line 2: expected each setting once, found tones again after line 1"),
        problems("tones: on\ntones: off\n"));
  }

  @Test
  void refusesWhatIsNoYamlWithItsLine() {
    List<String> found = problems("tones: on\nspelling: 'american\n");
    assertEquals(1, found.size());
    assertTrue(
        found.get(0).matches("tiptoe.yaml line [23]: expected YAML, found .*scanning.*"),
        found.get(0));
  }

  @Test
  void stopsCountingProblems() {
    assertEquals(20, problems("x: 1\n".repeat(100)).size());
  }

  @Property
  void anyTextOfYamlSignsIsReadOrRefused(
      @ForAll
          @Chars({
            ':', '-', '[', ']', '{', '}', '\'', '"', '#', '&', '*', '!', '|', '>', '%', '@', '`',
            '\n', ' ', '\t', ',', '?', 't', '0', '\u0000', '\u0085'
          })
          String text) {
    var outcome = SettingsFile.parse("tiptoe.yaml", text);
    assertEquals(Settings.DEFAULT, outcome.settings());
    outcome.problems().forEach(problem -> assertTrue(problem.line() >= 0, problem.toString()));
  }

  @Test
  void aNamedFileMustExistAndTheUsualOneNeedNot(@TempDir Path folder) throws IOException {
    Path file = folder.resolve("tiptoe.yaml");
    assertEquals(
        file + ": expected a configuration file, found none",
        SettingsFile.read(file).problems().get(0).toString());
    assertEquals(List.of(), SettingsFile.readUsual(file).problems());
    Files.writeString(file, "tones: off");
    assertEquals("off", SettingsFile.readUsual(file).settings().get(Setting.TONES));
    Files.write(file, new byte[] {'a', (byte) 0xff});
    assertEquals(
        file + ": expected UTF-8 text, found other bytes",
        SettingsFile.read(file).problems().get(0).toString());
    assertEquals(1, SettingsFile.read(folder).problems().size());
  }

  @Test
  void settingsRefuseWhatIsNoChoice() {
    assertEquals(
        "expected on or off for tones, found loud",
        assertThrows(
                IllegalArgumentException.class, () -> Settings.DEFAULT.with(Setting.TONES, "loud"))
            .getMessage());
    assertTrue(Settings.DEFAULT.with(Setting.TONES, "off").is(Setting.TONES, "off"));
  }
}
