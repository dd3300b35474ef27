package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;
import tiptoe.FullOnly;
import tiptoe.graph.ModelFolder;

/** What only a process of its own can lack: the library, and the locale that Java starts in. */
@Tag("process")
class ReadyProcessTest {
  private static final String OF_JAVA = "Exception|\\tat ";

  @TempDir private Path folder;

  private record Ran(int code, String out) {}

  private Ran run(List<String> java, Map<String, String> environment, String... args)
      throws IOException, InterruptedException {
    List<String> command = ChildJava.command();
    command.addAll(java);
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), Tiptoe.class.getName()));
    command.addAll(List.of(args));
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().putAll(environment);
    Process process = builder.start();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertTrue(out.lines().noneMatch(line -> line.matches(".*(" + OF_JAVA + ").*")), out);
    return new Ran(process.waitFor(), out);
  }

  @Test
  void aLibraryThatDoesNotLoadIsMissing() throws Exception {
    List<String> java =
        List.of("-Djna.nosys=true", "-Djna.noclasspath=true", "-Djna.boot.library.path=" + folder);
    Ran ran = run(java, Map.of(), "ready", "--no-microphone", "--data", folder.toString());
    assertEquals(1, ran.code(), ran.out());
    assertTrue(ran.out().contains("MISSING  library      expected the speech library"), ran.out());
    assertTrue(ran.out().contains("Unable to locate JNA native support library"), ran.out());
    assertTrue(ran.out().contains("to mend: use 64-bit Linux"), ran.out());
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void aHomeFolderThatTheLocaleCannotNameIsTold() throws Exception {
    Path home = accented();
    Ran ran =
        run(
            List.of("-Duser.home=" + home),
            Map.of("LC_ALL", "C", "XDG_CONFIG_HOME", "", "XDG_DATA_HOME", ""),
            "records");
    assertEquals(1, ran.code(), ran.out());
    assertTrue(ran.out().startsWith("expected a name that this system can have"), ran.out());
    assertTrue(ran.out().strip().endsWith("; start with LANG=C.UTF-8"), ran.out());
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void aFolderInTheCallThatTheLocaleCannotNameIsWrongUse() throws Exception {
    Ran ran = run(List.of(), Map.of("LC_ALL", "C"), "ready", "--data", accented().toString());
    assertEquals(2, ran.code(), ran.out());
    assertTrue(ran.out().contains("; start with LANG=C.UTF-8"), ran.out());
  }

  @Test
  @FullOnly("WeightDifferencesTest refuses them")
  @EnabledOnOs(OS.LINUX)
  void damagedWeightsAreRefusedByName() throws Exception {
    Path models = Files.createDirectory(folder.resolve("models"));
    for (String part : List.of("grammars", "models/" + ModelFolder.STOCK)) {
      Files.createSymbolicLink(folder.resolve(part), Path.of(part).toAbsolutePath());
    }
    byte[] weights = Files.readAllBytes(Path.of("models", ModelFolder.ADAPTED));
    weights[weights.length / 2] ^= 1;
    Files.write(models.resolve(ModelFolder.ADAPTED), weights);
    Path adapted = Files.writeString(folder.resolve("adapted.yaml"), "weights: adapted\n");

    Ran ran =
        run(
            List.of(),
            Map.of("TIPTOE_HOME", folder.toString(), "TIPTOE_MODEL", ""),
            "replay",
            "demo-audio/05-hips.wav",
            "--config",
            adapted.toString());

    assertEquals(1, ran.code(), ran.out());
    assertTrue(
        ran.out().matches("expected SHA-256 .{12}\u2026 of cry-adapted.differences in .*\n"),
        ran.out());
  }

  private Path accented() throws IOException {
    // Elsewhere this process cannot name it either.
    assumeTrue("UTF-8".equals(System.getProperty("sun.jnu.encoding")));
    return Files.createDirectory(folder.resolve("J\u00f6rg"));
  }
}
