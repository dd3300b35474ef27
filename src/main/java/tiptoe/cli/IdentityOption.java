package tiptoe.cli;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import picocli.CommandLine.Spec.Target;
import tiptoe.exam.Examination;
import tiptoe.exam.StatedIdentity;
import tiptoe.files.BoundedFile;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.Words;

/** Whose examination it is: from a file, or typed or scanned before it begins. */
final class IdentityOption {
  private static final int LONGEST_LINE = 64 << 10;

  @Spec(Target.MIXEE)
  private CommandSpec command;

  @Option(
      names = "--patient",
      paramLabel = "FILE",
      description = {
        "Who the baby is: a FHIR Patient, or JSON such as",
        "{\"name\": \"Ada Wren\", \"record-number\": \"K123456\"}."
      })
  private Path file;

  @Option(
      names = "--identify",
      description = "Ask who the baby is first; the answer can be typed or scanned.")
  private boolean asks;

  /** What was stated, fact by fact; empty where nothing was. Wrong input is wrong use. */
  Map<String, String> stated(Settings settings) throws IOException {
    StatedIdentity stated = file == null ? none() : read();
    return stated.facts().isEmpty() && asks
        ? asked(new Words(Protocol.standard(), settings), System.in)
        : stated.facts();
  }

  private static StatedIdentity none() {
    return new StatedIdentity(Map.of(), List.of(), List.of());
  }

  private StatedIdentity read() {
    StatedIdentity stated;
    try {
      stated = StatedIdentity.parse(BoundedFile.PATIENT.text(file), Protocol.standard());
    } catch (IOException e) {
      throw new ParameterException(command.commandLine(), "--patient: " + ProblemWording.of(e), e);
    }
    if (!stated.problems().isEmpty()) {
      throw new ParameterException(
          command.commandLine(), "--patient: " + String.join("; ", stated.problems()));
    }
    stated.remarks().forEach(remark -> Console.err().println("--patient: " + remark));
    return stated;
  }

  /** Asks until an answer can be meant and was confirmed, or nothing is answered. */
  static Map<String, String> asked(Words words, InputStream in) throws IOException {
    while (true) {
      Console.err()
          .println(
              "Who is the baby? Type or scan the record number, \"name: …; record number: …\" or"
                  + " the code; an empty line leaves it open.");
      String line = line(in);
      if (line.isBlank()) {
        return Map.of();
      }
      StatedIdentity stated = StatedIdentity.parse(line, Protocol.standard());
      if (!stated.problems().isEmpty()) {
        Console.err().println(String.join("; ", stated.problems()));
        continue;
      }
      stated.remarks().forEach(Console.err()::println);
      Console.err()
          .println(
              stated.facts().entrySet().stream()
                  .map(fact -> words.stated(fact.getKey(), fact.getValue()))
                  .collect(Collectors.joining("; ")));
      Console.err().println("Is that right? An empty line or \"yes\"; anything else asks again.");
      String answer = line(in).strip();
      if (answer.isEmpty() || answer.equalsIgnoreCase("yes")) {
        return stated.facts();
      }
    }
  }

  /** States it in an examination, which may have been of somebody else before. */
  static void state(Map<String, String> baby, Examination examination) throws IOException {
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

  // No further than the end of the line: the rest are keys for the screen.
  private static String line(InputStream in) throws IOException {
    java.io.ByteArrayOutputStream line = new java.io.ByteArrayOutputStream();
    int next = in.read();
    while (next >= 0 && next != '\n') {
      if (line.size() >= LONGEST_LINE) {
        throw new IOException("expected a line of at most 64 KiB, found more");
      }
      line.write(next);
      next = in.read();
    }
    return line.toString(StandardCharsets.UTF_8);
  }
}
