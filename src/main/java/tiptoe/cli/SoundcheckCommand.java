package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.audio.Chunk;
import tiptoe.audio.Level;
import tiptoe.audio.Microphone;
import tiptoe.audio.SoundCheck;
import tiptoe.exam.Heard;
import tiptoe.session.Engine;
import tiptoe.session.ExamSession;
import tiptoe.session.Home;
import tiptoe.session.MicrophoneWording;
import tiptoe.session.Sessions;
import tiptoe.session.TrialSentence;
import tiptoe.session.Understanding;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Recogniser;

/** Says how well the microphone hears, before a baby is examined. */
@Command(
    name = "soundcheck",
    mixinStandardHelpOptions = true,
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
  /** What is asked for: long, usual, and with a word that is rare elsewhere. */
  static final List<String> SENTENCE =
      List.of("anterior", "fontanelle", "open", "soft", "and", "flat");

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
        Console.err().println("expected a microphone, found none");
        return Tiptoe.COULD_NOT;
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
      TrialSentence sentence;
      if (from == null) {
        Console.out().println("say: " + String.join(" ", SENTENCE));
        sentence =
            TrialSentence.spoken(device, recogniser, SoundcheckCommand::meter, Console.err());
        meterOff();
      } else {
        sentence = TrialSentence.from(from, recogniser);
      }
      return judge(sentence, understanding) ? 0 : Tiptoe.COULD_NOT;
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

  private static boolean judge(TrialSentence sentence, Understanding understanding) {
    Level level = sentence.sound().level();
    if (level.isSilent()) {
      Console.err().println("expected sound, found that the microphone is mute");
      return false;
    }
    List<Hypothesis> heard = sentence.heard();
    // Where nothing was heard, all of it is measured: it may have been said too softly.
    double end = sentence.sound().seconds();
    show(
        heard.isEmpty()
            ? SoundCheck.of(sentence.sound(), 0, end)
            : SoundCheck.of(
                sentence.sound(),
                heard.get(0).start(),
                Math.min(end, heard.get(heard.size() - 1).end())));
    if (sentence.text().isEmpty()) {
      Console.err().println("expected the sentence, heard nothing of the examination");
      return false;
    }
    List<String> words = List.of(sentence.text().split(" "));
    int right = right(words);
    Console.out().println("heard: " + sentence.text());
    Console.out().printf("words: %d of %d right%n", right, SENTENCE.size());
    ExamSession session = Sessions.inMemory(understanding);
    heard.forEach(utterance -> session.hear(utterance, 0));
    session.record().utterances().stream()
        .map(utterance -> utterance.heard())
        .map(SoundcheckCommand::outcome)
        .forEach(Console.out()::println);
    boolean good = words.equals(SENTENCE);
    Console.out()
        .println(good ? "heard well" : "not heard well: say it again, and check the advice");
    return right > SENTENCE.size() / 2;
  }

  private static String outcome(Heard heard) {
    String reason = heard.reason() == null || heard.reason().isEmpty() ? "" : ", " + heard.reason();
    return "taken as: " + heard.outcome().id() + reason;
  }

  private static void show(SoundCheck check) {
    String beside =
        check.noiseDb() > Level.SILENCE
            ? String.format(
                Locale.ROOT,
                ", noise %.0f dB, so %.0f dB above the noise",
                check.noiseDb(),
                check.aboveNoiseDb())
            : "";
    String cut = check.clipped() == 0 ? "nothing cut off" : check.clipped() + " samples cut off";
    Console.out().printf(Locale.ROOT, "level: %.0f dB%s; %s%n", check.speechDb(), beside, cut);
    check.advice().forEach(line -> Console.out().println("advice: " + line));
  }

  /** Length of the longest common subsequence: words that were heard, in their order. */
  private static int right(List<String> heard) {
    int[] above = new int[SENTENCE.size() + 1];
    for (String word : heard) {
      int[] row = new int[above.length];
      for (int j = 1; j < row.length; j++) {
        row[j] =
            word.equals(SENTENCE.get(j - 1)) ? above[j - 1] + 1 : Math.max(above[j], row[j - 1]);
      }
      above = row;
    }
    return Arrays.stream(above).max().orElse(0);
  }
}
