package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.File;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;
import tiptoe.FullOnly;

/**
 * All commands in a process that has only the libraries that are shipped, not those of the tests.
 */
@Tag("hearing")
@Tag("process")
class RuntimeLibrariesTest {
  private static final List<String> FORMATS =
      List.of("fhir", "html", "pdf", "md", "txt", "csv", "json");

  /** "correction left barlow positive", in a synthetic voice. */
  private static final String CLIP = "src/test/resources/tiptoe/speech/clips/127.wav";

  @TempDir Path folder;

  private ChildCommands commands;

  @BeforeEach
  void start() throws IOException {
    String libraries = Files.readString(Path.of("target/libraries.txt")).strip();
    List<String> command = ChildJava.command();
    command.addAll(List.of("-Xmx1g", "-cp"));
    command.add(
        String.join(File.pathSeparator, "target/classes", libraries, passingCalls().toString()));
    commands = new ChildCommands(command, Map.of());
  }

  /** Of the tests' classes only those that pass on the calls. */
  private Path passingCalls() throws IOException {
    Path classes = folder.resolve("classes");
    for (Class<?> one : List.of(ChildCommands.class, ChildCommands.Ran.class)) {
      String name = one.getName().replace('.', '/') + ".class";
      Path file = classes.resolve(name);
      Files.createDirectories(file.getParent());
      try (InputStream in = one.getClassLoader().getResourceAsStream(name)) {
        Files.copy(in, file);
      }
    }
    return classes;
  }

  @AfterEach
  void end() throws IOException {
    commands.close();
  }

  private String run(String... arguments) throws IOException {
    List<String> call = new ArrayList<>(List.of(arguments));
    call.addAll(List.of("--data", folder.resolve("data").toString()));
    ChildCommands.Ran ran = commands.run(call.toArray(String[]::new));
    assertEquals(0, ran.code(), ran.out());
    return ran.out();
  }

  @Test
  @FullOnly("ReadyCommandTest hears the demonstration with the libraries of the tests")
  void anExaminationIsHeardReportedInEveryFormatAndShown() throws Exception {
    run("exam", "--from", CLIP, "--fast", "--plain");
    String exam;
    try (Stream<Path> exams = Files.list(folder.resolve("data/examinations"))) {
      exam = exams.findFirst().orElseThrow().getFileName().toString();
    }
    Path reports = folder.resolve("reports");
    run("report", exam, "--as", String.join(",", FORMATS), "--to", reports.toString());
    assertEquals(FORMATS.size(), written(reports));
    assertTrue(run("record", exam).contains("Barlow"));
    assertTrue(run("records").contains(exam));
  }

  @Test
  @FullOnly("ReadyCommandTest finds it ready with the libraries of the tests")
  void isReady() throws Exception {
    run("ready", "--no-microphone");
  }

  private static long written(Path reports) throws IOException {
    try (Stream<Path> files = Files.list(reports)) {
      return files.filter(file -> file.toFile().length() > 0).count();
    }
  }
}
