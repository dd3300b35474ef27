package tiptoe.audio;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;

/**
 * Records the first microphone into a folder and prints what happens, a line each, until its input
 * says {@code stop}. Every {@code tone NAME} on its input is played. For tests that need a JVM with
 * an environment of its own.
 */
final class SoundProbe {
  private SoundProbe() {}

  public static void main(String[] arguments) throws IOException, InterruptedException {
    System.out.println("devices " + Microphone.devices());
    try (Speaker speaker = Speaker.on(Optional.empty())) {
      Microphone microphone =
          Microphone.open(Optional.empty(), Clock.systemUTC(), SoundProbe::print);
      Recorder recorder =
          Recorder.start(
              microphone.listen(),
              SegmentStore.open(Path.of(arguments[0])),
              problem -> System.out.println("problem " + problem.getMessage()));
      // The server hands over its first sound up to 2 s after the device was opened.
      microphone.listen().next();
      System.out.println("listening");
      obey(speaker);
      microphone.close();
      recorder.finish();
    } catch (AudioProblem e) {
      System.out.println("problem " + e.getMessage());
    }
  }

  private static void obey(Speaker speaker) throws IOException {
    BufferedReader input =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String line = input.readLine(); line != null; line = input.readLine()) {
      if (line.equals("stop")) {
        return;
      }
      Pcm tone = Tone.valueOf(line.substring("tone ".length())).render(1);
      Optional<AudioProblem> problem = Speaker.problem(speaker.play(tone));
      System.out.println(problem.map(p -> "problem " + p.getMessage()).orElse("played"));
    }
  }

  private static void print(CaptureEvent event) {
    if (event instanceof CaptureEvent.Trouble trouble) {
      System.out.println("trouble " + trouble.cause());
    } else if (event instanceof CaptureEvent.Recovered recovered) {
      System.out.println("recovered " + recovered.gap().cause());
    }
  }
}
