package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;

/** Commands in a process that has only the libraries that are shipped, not those of the tests. */
@Tag("hearing")
@Tag("process")
class RuntimeLibrariesTest {
  private static final List<String> FORMATS =
      List.of("fhir", "html", "pdf", "md", "txt", "csv", "json");

  @TempDir Path folder;

  private String run(String... arguments) throws Exception {
    String libraries = Files.readString(Path.of("target/libraries.txt")).strip();
    List<String> command = ChildJava.command();
    command.addAll(List.of("-Xmx1g", "-cp", "target/classes" + File.pathSeparator + libraries));
    command.add(Tiptoe.class.getName());
    command.addAll(List.of(arguments));
    command.addAll(List.of("--data", folder.resolve("data").toString()));
    Path output = folder.resolve("output");
    Process process =
        new ProcessBuilder(command)
            .redirectErrorStream(true)
            .redirectOutput(output.toFile())
            .start();
    process.getOutputStream().close();
    int code = process.waitFor();
    String said = Files.readString(output);
    assertEquals(0, code, said);
    return said;
  }

  @Test
  void anExaminationIsHeardReportedInEveryFormatAndShown() throws Exception {
    run("exam", "--from", "demo-audio/05-hips.wav", "--fast", "--plain");
    String exam;
    try (Stream<Path> exams = Files.list(folder.resolve("data/examinations"))) {
      exam = exams.findFirst().orElseThrow().getFileName().toString();
    }
    Path reports = folder.resolve("reports");
    run("report", exam, "--as", String.join(",", FORMATS), "--to", reports.toString());
    assertEquals(FORMATS.size(), written(reports));
    assertTrue(run("record", exam).contains("Barlow"));
    assertTrue(run("records").contains(exam));
    run("ready", "--no-microphone");
  }

  private static long written(Path reports) throws IOException {
    try (Stream<Path> files = Files.list(reports)) {
      return files.filter(file -> file.toFile().length() > 0).count();
    }
  }
}
