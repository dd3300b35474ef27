package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.audio.Chunk;
import tiptoe.audio.Level;
import tiptoe.audio.Microphone;
import tiptoe.session.Engine;
import tiptoe.session.Home;
import tiptoe.session.MicrophoneWording;
import tiptoe.session.SentenceCheck;
import tiptoe.session.TrialSentence;
import tiptoe.session.Understanding;
import tiptoe.speech.Recogniser;

/** Says how well the microphone hears, before a baby is examined. */
@Command(
    name = "soundcheck",
    description = {
      "Tries the microphone: level, and how well one sentence is heard.",
      "It can also list the microphones there are."
    },
    footer = {
      "",
      "Example: tiptoe soundcheck",
      "         tiptoe soundcheck --list",
      "         tiptoe soundcheck --device headset"
    })
final class SoundcheckCommand implements Callable<Integer> {
  @Option(names = "--list", description = "Only list the microphones.")
  private boolean list;

  @Option(names = "--device", paramLabel = "NAME", description = "The microphone, or a part of it.")
  private String device;

  @Option(names = "--from", paramLabel = "FILE", description = "A recording of the sentence.")
  private Path from;

  @Option(names = "--model", paramLabel = "DIR", description = "Another speech model folder.")
  private Path model;

  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    if (list || from == null) {
      List<String> names = Microphone.devices();
      if (names.isEmpty()) {
        throw new IOException("expected a microphone, found none");
      }
      Console.out().println("microphones:");
      names.forEach(name -> Console.out().println("  " + name));
    }
    return list ? 0 : check();
  }

  private int check() throws IOException {
    Home home = Home.of(option.protocol());
    Understanding understanding = Understanding.load(home);
    try (Engine engine = Engine.open(home, understanding, model, option.settings(), Console.err());
        Recogniser recogniser = engine.recogniser()) {
      if (from == null) {
        Console.out().println("say: " + String.join(" ", SentenceCheck.SENTENCE));
      }
      TrialSentence sentence =
          TrialSentence.of(from, device, recogniser, SoundcheckCommand::meter, Console.err());
      meterOff();
      SentenceCheck check = SentenceCheck.of(sentence, understanding);
      check.lines().forEach(Console.out()::println);
      if (!check.problem().isEmpty()) {
        Console.err().println(check.problem());
      }
      return check.heard() ? 0 : Tiptoe.COULD_NOT;
    }
  }

  private static void meter(Chunk chunk) {
    if (System.console() != null) {
      Level level = Level.of(chunk.samples());
      Console.err().print("\r\033[K" + MicrophoneWording.bar(level.rmsDb(), level.isClipping()));
      Console.err().flush();
    }
  }

  private static void meterOff() {
    if (System.console() != null) {
      Console.err().print("\r\033[K");
    }
  }
}
