package tiptoe.speech;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;

/**
 * Prints what long stretches of hard sound cost the engine: memory, load, how far it falls behind.
 * Run it with {@code mvn -q test-compile exec:java -Dexec.classpathScope=test
 * -Dexec.mainClass=tiptoe.speech.EnduranceBenchmark -Dexec.args=60}, or {@code "60 cries"} for one
 * of them.
 */
public final class EnduranceBenchmark {
  private static final Path CRIES = Path.of("../shared/audio/cry");

  private EnduranceBenchmark() {}

  /** Takes the minutes of each sound, and possibly how the name of the only one begins. */
  public static void main(String[] args) throws IOException {
    int minutes = args.length == 0 ? 10 : Integer.parseInt(args[0]);
    Map<String, Pcm> sounds = new LinkedHashMap<>();
    sounds.put("silence", Pcm.silence(60));
    sounds.put("white noise", Strain.whiteNoise(60, 2000));
    sounds.put("cries", cries());
    sounds.put("four people at once", Strain.babble(60, 4));
    if (args.length > 1) {
      sounds.keySet().removeIf(name -> !name.startsWith(args[1]));
    }
    try (SpeechModel model = Clips.hearingTwice(Clips.network())) {
      for (Map.Entry<String, Pcm> sound : sounds.entrySet()) {
        int times = (int) Math.ceil(minutes * 60 / sound.getValue().seconds());
        long before = Strain.residentMegabytes();
        Strain.Cost cost = Strain.of(model, sound.getValue(), times);
        System.out.printf(
            "%-20s %d min: load %.3f, behind at worst %.2f s, longest utterance %.1f s,"
                + " %d with a phrase, resident %d MB, then %d MB%n",
            sound.getKey(),
            minutes,
            cost.load(),
            cost.behind(),
            cost.longest(),
            cost.heard(),
            before,
            Strain.residentMegabytes());
      }
    }
  }

  /** Recorded cries where they are there, else made ones. */
  private static Pcm cries() throws IOException {
    if (!Files.isDirectory(CRIES)) {
      return Strain.cry(60);
    }
    try (Stream<Path> files = Files.list(CRIES)) {
      List<Path> wavs = files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
      Pcm all = Pcm.silence(0);
      for (Path wav : wavs) {
        all = Pcm.join(all, AudioFile.read(wav));
      }
      return all;
    }
  }
}
