package tiptoe.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.time.ZoneId;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.clinical.AnswersFile;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Assessor;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.journal.StoredExam;
import tiptoe.files.BoundedFile;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Settings;
import tiptoe.wording.AssessmentWording;
import tiptoe.wording.Words;

/** Says what follows from the findings of a record or of a file. */
@Command(
    name = "assess",
    description = {
      "Says what follows from findings: flags, centiles, screens, plan.",
      "RECORD is the id or folder of an examination, or a JSON file such as replay --json prints:"
          + " an object with answers and, where known, baby and examined-at."
    },
    footer = {"", "Example: tiptoe assess answers.json"})
final class AssessCommand implements Callable<Integer> {
  private static final ObjectMapper JSON =
      new ObjectMapper()
          .registerModule(
              new SimpleModule().addSerializer(Instant.class, ToStringSerializer.instance));

  @Parameters(paramLabel = "RECORD", description = "An examination, or findings as JSON.")
  private Path named;

  @Option(names = "--json", description = "Print one JSON object, nothing else.")
  private boolean json;

  @Mixin private RecordOptions options;
  @Mixin private AlteredOption altered;

  private String banner = "";

  @Override
  public Integer call() throws IOException {
    Settings settings = options.settings();
    ExamRecord record = isJson() ? null : record();
    Protocol protocol = record == null ? options.protocol() : record.protocol();
    Assessment assessment =
        record == null ? ofFile(protocol, settings) : options.wording(record).assessment();
    if (assessment == null) {
      return Tiptoe.COULD_NOT;
    }
    if (json) {
      ObjectNode object = JSON.valueToTree(assessment);
      if (!banner.isEmpty()) {
        object.put("altered", banner);
      }
      Console.json(object);
    } else {
      if (!banner.isEmpty()) {
        Console.out().println(banner);
      }
      Console.out().print(AssessmentWording.of(assessment, new Words(protocol, settings)));
    }
    return 0;
  }

  private boolean isJson() {
    return Files.exists(named) && !Files.isDirectory(named) || named.toString().endsWith(".json");
  }

  private Assessment ofFile(Protocol protocol, Settings settings) throws IOException {
    AnswersFile answers =
        AnswersFile.parse(BoundedFile.ANSWERS.text(named), protocol, ZoneId.systemDefault());
    answers.problems().forEach(problem -> Console.err().println(named + ": " + problem));
    return answers.problems().isEmpty()
        ? Assessor.of(protocol)
            .assess(answers.baby(), answers.answers(), settings, answers.examinedAt())
        : null;
  }

  private ExamRecord record() throws IOException {
    StoredExam exam = options.readAny(named.toString());
    banner = altered.pass(exam).banner(exam.record());
    return exam.record();
  }
}
