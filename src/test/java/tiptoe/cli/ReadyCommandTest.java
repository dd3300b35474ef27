package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.screen.TerminalReadiness;
import tiptoe.session.Readiness;
import tiptoe.session.ReadinessCheck;

/** What is missing is named, with how to mend it. */
class ReadyCommandTest {
  @TempDir Path folder;

  private record Ran(int code, String out) {}

  private static Ran run(String... args) {
    ByteArrayOutputStream out = new ByteArrayOutputStream();
    PrintStream to = new PrintStream(out, true, StandardCharsets.UTF_8);
    int code = Tiptoe.run(to, to, args);
    return new Ran(code, out.toString(StandardCharsets.UTF_8));
  }

  private ReadinessCheck named(List<ReadinessCheck> checks, String name) {
    return checks.stream().filter(check -> check.name().equals(name)).findFirst().orElseThrow();
  }

  @Test
  void aWholeProgramIsReadyAndHearsTheDemonstration() {
    Ran ran = run("ready", "--no-microphone", "--data", folder.toString());
    assertEquals(0, ran.code(), ran.out());
    assertTrue(ran.out().contains("phrases in a part of the demonstration"), ran.out());
    assertTrue(ran.out().endsWith("ready" + System.lineSeparator()), ran.out());
  }

  @Test
  void aMissingModelIsNamedWithHowToMendIt() {
    String nowhere = folder.resolve("nowhere").toString();
    Ran ran = run("ready", "--no-microphone", "--data", folder.toString(), "--model", nowhere);
    assertEquals(1, ran.code());
    assertTrue(ran.out().contains("MISSING  speech model"), ran.out());
    assertTrue(ran.out().contains("to mend: name another folder by --model"), ran.out());
    assertTrue(ran.out().contains("not ready: see MISSING above"), ran.out());
  }

  @Test
  void aFileWhereRecordsShouldGoIsMissing() throws IOException {
    Path file = Files.writeString(folder.resolve("file"), "x");
    Readiness readiness = new Readiness(Map.of(), null);
    readiness.records(file.resolve("data"));
    assertEquals(ReadinessCheck.State.MISSING, named(readiness.checks(), "records").state());
    assertTrue(!readiness.isReady());
  }

  @ParameterizedTest
  @ValueSource(strings = {"a file", "a link that leads nowhere"})
  void whatIsNoFolderWhereExaminationsShouldGoIsMissing(String what) throws IOException {
    Path examinations = folder.resolve("examinations");
    if (what.equals("a file")) {
      Files.writeString(examinations, "x");
    } else {
      Files.createSymbolicLink(examinations, folder.resolve("nowhere"));
    }
    assertMissing("expected a folder at " + examinations + ", found something else", folder);
  }

  @Test
  void aFolderInWhichNoFileCanBeMadeIsMissing() {
    // Nobody can make a file here, not even the superuser that a build may run as.
    Path data = Path.of("/proc/self/fd");
    assumeTrue(Files.isDirectory(data));
    assertMissing("expected to write to " + data + ", found no such file or folder", data);
  }

  private void assertMissing(String found, Path data) {
    Readiness readiness = new Readiness(Map.of(), null);
    readiness.records(data);
    ReadinessCheck records = named(readiness.checks(), "records");
    assertEquals(ReadinessCheck.State.MISSING, records.state());
    assertEquals(found, records.found());
  }

  @Test
  void recordsThatOthersCanReadAreTold() throws IOException {
    Path open = Files.createDirectory(folder.resolve("examinations"));
    Files.setPosixFilePermissions(open, PosixFilePermissions.fromString("rwxr-xr-x"));
    Readiness readiness = new Readiness(Map.of(), null);
    readiness.records(folder);
    ReadinessCheck privacy = named(readiness.checks(), "privacy");
    assertEquals(ReadinessCheck.State.WANTING, privacy.state());
    assertEquals("chmod 700 " + open, privacy.mend());
    assertTrue(readiness.isReady());
  }

  @Test
  void aLocaleWithoutUtf8AndNoTerminalAreTold() {
    Map<String, String> environment = Map.of("LANG", "C", "TERM", "dumb");
    Readiness readiness = new Readiness(environment, null);
    readiness.add(TerminalReadiness.checks(environment));
    assertEquals("LANG=C.UTF-8", named(readiness.checks(), "locale").mend());
    assertEquals(ReadinessCheck.State.WANTING, named(readiness.checks(), "terminal").state());
    assertTrue(readiness.isReady());
  }

  @Test
  void aTerminalOfFewSignsIsNotTakenForALocaleWithoutUtf8() {
    List<ReadinessCheck> checks =
        TerminalReadiness.checks(Map.of("LANG", "C.UTF-8", "TERM", "linux"));
    ReadinessCheck locale = named(checks, "locale");
    assertEquals("UTF-8, but plain signs are used, since the terminal has few", locale.found());
    assertEquals("use a terminal window; TERM says linux", locale.mend());
  }

  @Test
  void aModelFolderWithoutANameIsMissing() {
    Ran ran = run("ready", "--no-microphone", "--data", folder.toString(), "--model", "/");
    assertEquals(1, ran.code());
    assertTrue(
        ran.out().contains("expected am/final.mdl in the speech model /, found none"), ran.out());
  }

  @Test
  void aBrokenConfigurationIsMissing() throws IOException {
    Path config = Files.writeString(folder.resolve("tiptoe.yaml"), "tones: loud\n");
    Ran ran =
        run("ready", "--no-microphone", "--data", folder.toString(), "--config", config.toString());
    assertEquals(1, ran.code());
    assertTrue(ran.out().contains("MISSING  settings"), ran.out());
  }
}
