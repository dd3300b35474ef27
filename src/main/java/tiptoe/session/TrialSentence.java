package tiptoe.session;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;
import tiptoe.audio.AudioFile;
import tiptoe.audio.AudioProblem;
import tiptoe.audio.CaptureEvent;
import tiptoe.audio.Chunk;
import tiptoe.audio.Gap;
import tiptoe.audio.Microphone;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Recogniser;

/**
 * One sentence said to try something out.
 *
 * @param heard what was heard, filler alone too
 * @param sound all the sound, from before the sentence on
 */
public record TrialSentence(List<Hypothesis> heard, Pcm sound) {
  /** So long a microphone is listened to when nothing is said, in seconds. */
  static final double PATIENCE_SECONDS = 20;

  /**
   * Listens to a recording, or where none is named, to a microphone.
   *
   * @param device its name or a part of it; null for the first one
   * @param seen shown each piece of sound of a microphone
   * @param told what the microphone reports
   * @throws AudioProblem if there is no such microphone, or it gave up
   */
  public static TrialSentence of(
      Path file, String device, Recogniser recogniser, Consumer<Chunk> seen, PrintStream told)
      throws IOException {
    return file == null ? spoken(device, recogniser, seen, told) : from(file, recogniser);
  }

  /** Listens to a whole recording. */
  private static TrialSentence from(Path file, Recogniser recogniser) throws IOException {
    try (SampleSource sound = AudioFile.open(file)) {
      return listen(sound, recogniser, Double.POSITIVE_INFINITY, chunk -> {});
    }
  }

  /** Listens to a microphone until a phrase was heard or patience ends. */
  private static TrialSentence spoken(
      String device, Recogniser recogniser, Consumer<Chunk> seen, PrintStream told)
      throws IOException {
    AtomicReference<CaptureEvent.Trouble> trouble = new AtomicReference<>();
    AtomicReference<SampleSource> open = new AtomicReference<>();
    try (Microphone microphone =
            Microphone.open(
                Optional.ofNullable(device),
                Clock.systemDefaultZone(),
                event -> reported(event, trouble, open.get(), told));
        SampleSource sound = microphone.listen()) {
      open.set(sound);
      TrialSentence sentence = listen(sound, recogniser, PATIENCE_SECONDS, seen);
      CaptureEvent.Trouble last = trouble.get();
      if (last != null && sentence.heard().isEmpty()) {
        throw new AudioProblem("expected sound, found that " + last.cause().words());
      }
      return sentence;
    }
  }

  // A mute microphone may yet be turned on; from one that is gone nothing comes to wait for.
  private static void reported(
      CaptureEvent event,
      AtomicReference<CaptureEvent.Trouble> trouble,
      SampleSource sound,
      PrintStream told) {
    told.println("microphone: " + MicrophoneWording.of(event));
    boolean bad = event instanceof CaptureEvent.Trouble;
    trouble.set(bad ? (CaptureEvent.Trouble) event : null);
    if (bad && trouble.get().cause() != Gap.Cause.SILENT && sound != null) {
      sound.end();
    }
  }

  private static TrialSentence listen(
      SampleSource sound, Recogniser recogniser, double patience, Consumer<Chunk> seen)
      throws IOException {
    List<Hypothesis> heard = new ArrayList<>();
    ByteArrayOutputStream kept = new ByteArrayOutputStream();
    boolean whole = Double.isInfinite(patience);
    boolean over = false;
    for (Optional<Chunk> next = sound.next(); next.isPresent() && !over; next = sound.next()) {
      Chunk chunk = next.get();
      seen.accept(chunk);
      kept.write(bytes(chunk.samples()));
      heard.addAll(recogniser.accept(chunk.samples()));
      boolean said = heard.stream().anyMatch(Hypothesis::hasPhrase);
      over = !whole && (said || (double) chunk.end() / Pcm.RATE >= patience);
    }
    recogniser.finish().ifPresent(heard::add);
    short[] samples = new short[kept.size() / Short.BYTES];
    ByteBuffer.wrap(kept.toByteArray()).asShortBuffer().get(samples);
    return new TrialSentence(heard, Pcm.of(samples));
  }

  private static byte[] bytes(short[] samples) {
    ByteBuffer bytes = ByteBuffer.allocate(samples.length * Short.BYTES);
    bytes.asShortBuffer().put(samples);
    return bytes.array();
  }

  /** The phrases of all utterances as one text. */
  public String text() {
    return String.join(" ", heard.stream().map(Hypothesis::text).toList()).strip();
  }
}
