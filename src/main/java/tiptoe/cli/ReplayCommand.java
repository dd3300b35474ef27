package tiptoe.cli;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.audio.AudioFile;
import tiptoe.audio.SampleSource;
import tiptoe.report.RecordJson;
import tiptoe.session.Dictation;
import tiptoe.session.Engine;
import tiptoe.session.ExamSession;
import tiptoe.session.Home;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.wording.ChecklistWording;
import tiptoe.wording.ProblemWording;
import tiptoe.wording.UtteranceWording;

/** Decodes recorded dictations. */
@Command(
    name = "replay",
    description = "Hears recorded dictations; each is an examination of its own.",
    footer = {
      "",
      "Example: tiptoe replay ward-round.wav",
      "         tiptoe replay --json demo-audio"
    })
final class ReplayCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FILE", arity = "1..*", description = "Audio files, or folders.")
  private List<Path> named;

  @Option(names = "--json", description = "Print one JSON object for each file, nothing else.")
  private boolean json;

  @Option(
      names = "--as-one",
      description = "Take the files, in order, as parts of one examination.")
  private boolean asOne;

  @Option(names = "--model", paramLabel = "DIR", description = "Another speech model folder.")
  private Path model;

  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    Settings settings = option.settings();
    Home home = Home.of(option.protocol());
    Understanding understanding = Understanding.load(home);
    int failed = 0;
    List<Path> files = new ArrayList<>();
    for (Path one : named) {
      files.addAll(AudioFile.in(one));
    }
    try (Engine engine = Engine.open(home, understanding, model, settings, Console.err())) {
      ExamSession session = Sessions.inMemory(understanding, settings);
      double offset = 0;
      for (Path file : files) {
        session = asOne ? session : Sessions.inMemory(understanding, settings);
        try (SampleSource sound = AudioFile.open(file)) {
          double seconds =
              new Dictation(engine, session).listen(sound, asOne ? offset : 0, changes -> {});
          offset += seconds;
          if (!asOne) {
            show(file.toString(), seconds, session);
          }
        } catch (IOException e) {
          Console.err().println(ProblemWording.of(e));
          failed++;
        }
      }
      if (asOne && failed < files.size()) {
        show(files.get(0).toString(), offset, session);
      }
    }
    return failed == 0 ? 0 : Tiptoe.COULD_NOT;
  }

  private void show(String name, double seconds, ExamSession session) {
    if (json) {
      ObjectNode node = new ObjectMapper().createObjectNode();
      node.put("file", name);
      node.put("seconds", BigDecimal.valueOf(seconds).setScale(2, RoundingMode.HALF_UP));
      node.setAll(RecordJson.of(session.record(), session.assessment()));
      Console.json(node);
    } else {
      Console.out().println(name);
      Console.out().print(UtteranceWording.of(session.record(), session.wording().words()));
      Console.out().println();
      Console.out().print(ChecklistWording.of(session.wording()));
    }
  }
}
