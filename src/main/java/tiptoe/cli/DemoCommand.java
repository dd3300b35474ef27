package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import tiptoe.audio.AudioFile;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.protocol.Caution;
import tiptoe.report.Format;
import tiptoe.report.Reports;
import tiptoe.session.Dictation;
import tiptoe.session.Engine;
import tiptoe.session.ExamSession;
import tiptoe.session.Home;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.wording.ChecklistWording;
import tiptoe.wording.UtteranceWording;
import tiptoe.wording.Words;

/** Decodes the invented examination that comes with the program. */
@Command(
    name = "demo",
    description = "Hears the invented examination in demo-audio.",
    footer = {"", "Example: tiptoe demo"})
final class DemoCommand implements Callable<Integer> {
  @Option(
      names = "--to",
      paramLabel = "DIR",
      defaultValue = "tiptoe-demo",
      description = "Where the files go (default: ${DEFAULT-VALUE}).")
  private Path folder;

  @Override
  public Integer call() throws IOException {
    // Whether the files can be written is told before the examination is heard.
    Reports.makeFolder(folder);
    Files.delete(Files.createTempFile(folder, "tiptoe", null));
    Home home = Home.locate();
    Console.out().println(Caution.TEXT);
    Console.out().println();
    Understanding understanding = Understanding.load(home);
    try (Engine engine = Engine.open(home, understanding, null, Settings.DEFAULT, Console.err())) {
      ExamSession session = Sessions.inMemory(understanding);
      double offset = 0;
      for (Path file : AudioFile.in(home.demoAudio())) {
        Console.out().println("hearing " + file.getFileName());
        try (SampleSource sound = AudioFile.open(file)) {
          offset +=
              new Dictation(engine, session)
                  .listen(sound, offset, now -> show(now, session.wording().words()));
        }
      }
      Console.out().println();
      Console.out().print(ChecklistWording.of(session.wording()));
      write(session);
    }
    return 0;
  }

  private void write(ExamSession session) throws IOException {
    Console.out().println();
    Console.out().println("FILES");
    Reports.write(session.wording(), List.of(Format.values()), folder, "examination", true)
        .forEach(file -> Console.out().println("  " + file));
  }

  private static void show(Changes changes, Words words) {
    changes
        .of(Event.UtteranceHeard.class)
        .flatMap(heard -> changes.record().utterance(heard.number()).stream())
        .map(utterance -> UtteranceWording.of(changes.record(), utterance, words))
        .forEach(Console.out()::print);
  }
}
