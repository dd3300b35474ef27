package tiptoe.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.MalformedInputException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.clinical.AnswersFile;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.AssessmentText;
import tiptoe.clinical.Assessor;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;

/** Says what follows from findings in a file. */
@Command(
    name = "assess",
    mixinStandardHelpOptions = true,
    description = {
      "Says what follows from findings: flags, centiles, screens, what to do later.",
      "FILE is JSON such as replay --json prints: an object with answers and, where known, baby"
          + " and examined-at."
    },
    footer = {"", "Example: tiptoe assess answers.json"})
final class AssessCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", description = "Findings as JSON.")
  private Path file;

  @Option(names = "--json", description = "Print one JSON object, nothing else.")
  private boolean json;

  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    if (Files.isDirectory(file)) {
      Console.err().println("expected a file of answers, found a folder at " + file);
      return Tiptoe.COULD_NOT;
    }
    Settings settings = option.settings();
    Protocol protocol = Protocol.standard();
    AnswersFile answers = AnswersFile.parse(text(), protocol, ZoneId.systemDefault());
    if (!answers.problems().isEmpty()) {
      answers.problems().forEach(problem -> Console.err().println(file + ": " + problem));
      return Tiptoe.COULD_NOT;
    }
    Assessment assessment =
        Assessor.standard()
            .assess(answers.baby(), answers.answers(), settings, answers.examinedAt());
    if (json) {
      Console.out().println(new ObjectMapper().writeValueAsString(assessment));
    } else {
      Console.out().print(AssessmentText.of(assessment, protocol, settings));
    }
    return 0;
  }

  private String text() throws IOException {
    try {
      return Files.readString(file);
    } catch (MalformedInputException e) {
      throw new IOException("expected UTF-8 text, found other bytes in " + file, e);
    }
  }
}
