package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.FullOnly;

/**
 * Sound through Java Sound, ALSA and a PulseAudio server, as at the bedside: played into a null
 * sink, heard through the microphone that listens to it.
 */
@Tag("process")
@Timeout(value = 3, unit = TimeUnit.MINUTES)
class RealSoundPathTest {
  @TempDir Path folder;

  private PulseServer pulse;
  private Process probe;
  private BufferedReader said;
  private PrintWriter orders;

  @BeforeEach
  void startServer() throws IOException, InterruptedException {
    String missing = PulseServer.missing();
    assumeTrue(missing.isEmpty(), missing);
    pulse = PulseServer.start(Files.createDirectory(folder.resolve("pulse")));
    probe = pulse.java(SoundProbe.class, recording().toString());
    said = probe.inputReader(StandardCharsets.UTF_8);
    orders = new PrintWriter(probe.getOutputStream(), true, StandardCharsets.UTF_8);
  }

  @AfterEach
  void stopServer() throws InterruptedException {
    if (probe != null) {
      probe.destroyForcibly().waitFor();
    }
    if (pulse != null) {
      pulse.close();
    }
  }

  @Test
  @FullOnly("LiveExamTest mutes the microphone and pulls it out")
  void recordsWhatIsPlayedIntoTheMicrophone() throws Exception {
    Path wav = folder.resolve("melody.wav");
    AudioFile.write(
        wav,
        Pcm.join(
            Signals.tone(500, 1, 0.5),
            Pcm.silence(0.5),
            Signals.tone(1500, 1, 0.25),
            Pcm.silence(0.3)));
    await("listening");
    pulse.play(wav);
    Pcm heard = stop();

    int first = onset(heard, 500, 0);
    assertEquals(0.5, Goertzel.amplitude(second(heard, first), 500), 0.02);
    int second = onset(heard, 1500, first);
    assertEquals(0.25, Goertzel.amplitude(second(heard, second), 1500), 0.02);
    assertEquals(1.5, (second - first) / (double) Pcm.RATE, 0.05);
  }

  @Test
  void isHeardPlayingItsTones() throws Exception {
    await("listening");
    for (Tone tone : Tone.values()) {
      orders.println("tone " + tone);
      await("played");
    }
    Pcm heard = stop();
    int at = 0;
    for (Tone tone : Tone.values()) {
      for (Tone.Note note : tone.notes()) {
        at = onset(heard, note.hertz(), at);
      }
    }
  }

  @Test
  @FullOnly("LiveExamTest mutes the microphone and pulls it out")
  void comesBackAfterTheDeviceWasPulledOut() throws Exception {
    await("listening");
    pulse.unplug();
    await("trouble GONE");
    pulse.plugIn();
    await("recovered GONE");
    Path wav = folder.resolve("tone.wav");
    AudioFile.write(wav, Signals.tone(700, 1, 0.5));
    pulse.play(wav);
    onset(stop(), 700, 0);
  }

  @Test
  @FullOnly("MicrophoneTest comes back after the microphone was pulled out")
  void comesBackAfterTheSoundServerCrashed() throws Exception {
    await("listening");
    pulse.kill();
    await("trouble GONE");
    pulse.restart();
    await("recovered GONE");
    Path wav = folder.resolve("tone.wav");
    AudioFile.write(wav, Signals.tone(700, 1, 0.5));
    pulse.play(wav);
    onset(stop(), 700, 0);
    List<Segment> segments = SegmentStore.segments(recording());
    assertTrue(segments.get(1).position() > segments.get(0).end(), "no gap in " + segments);
  }

  @Test
  @FullOnly("LiveExamTest mutes the microphone and pulls it out")
  void noticesThatTheMicrophoneIsMute() throws Exception {
    await("listening");
    await("trouble SILENT");
    Path wav = folder.resolve("tone.wav");
    AudioFile.write(wav, Signals.tone(700, 1, 0.5));
    pulse.play(wav);
    await("recovered SILENT");
  }

  private Path recording() {
    return folder.resolve("recording");
  }

  /** Reads what the probe says up to a line that begins so. */
  private void await(String wanted) throws IOException {
    StringBuilder before = new StringBuilder();
    for (String line = said.readLine(); line != null; line = said.readLine()) {
      if (line.startsWith(wanted)) {
        return;
      }
      before.append(line).append('\n');
    }
    throw new AssertionError("the probe never said '" + wanted + "' but:\n" + before);
  }

  private Pcm stop() throws IOException, InterruptedException {
    orders.println("stop");
    assertEquals(0, probe.waitFor());
    return SegmentStore.read(recording(), 0, 3600).orElseThrow();
  }

  /** Where a frequency begins to be heard, at or behind a place. */
  private static int onset(Pcm heard, double hertz, int from) {
    int step = Pcm.RATE / 100;
    int window = 5 * step;
    for (int at = from; at + window <= heard.samples().length; at += step) {
      double start = (double) at / Pcm.RATE;
      Pcm piece = heard.slice(start, start + (double) window / Pcm.RATE);
      if (Goertzel.amplitude(piece, hertz) > 0.1) {
        return at;
      }
    }
    throw new AssertionError(hertz + " Hz is not heard behind " + from);
  }

  private static Pcm second(Pcm heard, int from) {
    double start = (double) from / Pcm.RATE;
    return heard.slice(start + 0.1, start + 0.9);
  }
}
