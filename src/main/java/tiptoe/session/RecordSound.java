package tiptoe.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.function.Consumer;
import tiptoe.audio.Pcm;
import tiptoe.audio.Speaker;
import tiptoe.audio.WavFile;
import tiptoe.wording.ProblemWording;

/** Plays the sound of a record, or writes a stretch of it to a file. */
public final class RecordSound implements Playback, AutoCloseable {
  /** The sound between two seconds of the examination; empty if none is kept of that time. */
  public interface Kept {
    Optional<Pcm> between(double from, double to) throws IOException;
  }

  private final Kept kept;
  private final Path folder;
  private final String name;
  private final Speaker speaker = Speaker.on(Optional.empty());

  /**
   * @param folder where stretches are written
   * @param name what their names begin with
   */
  public RecordSound(Kept kept, Path folder, String name) {
    this.kept = kept;
    this.folder = folder;
    this.name = name;
  }

  @Override
  public void play(double from, double to, double speed, Consumer<String> trouble) {
    try {
      Pcm pcm = sound(from, to);
      if (Speaker.devices().isEmpty()) {
        trouble.accept("no loudspeaker was found; w writes the sound to a WAV file");
        return;
      }
      CompletableFuture<Void> done = speaker.play(pcm, speed);
      done.exceptionally(
          problem -> {
            if (!done.isCancelled()) {
              trouble.accept(ProblemWording.of(cause(problem)) + "; w writes it to a WAV file");
            }
            return null;
          });
    } catch (IOException e) {
      trouble.accept(ProblemWording.of(e));
    }
  }

  private static Throwable cause(Throwable problem) {
    return problem.getCause() == null ? problem : problem.getCause();
  }

  private Pcm sound(double from, double to) throws IOException {
    return kept.between(from, to)
        .orElseThrow(() -> new IOException("no sound is kept of that time"));
  }

  @Override
  public void stop() {
    speaker.stop();
  }

  @Override
  public String export(double from, double to) throws IOException {
    Pcm pcm = sound(from, to);
    String stretch = String.format(Locale.ROOT, "%s-%.1fs", name, from);
    Path file = folder.resolve(stretch + ".wav");
    for (int number = 2; Files.exists(file); number++) {
      file = folder.resolve(stretch + "-" + number + ".wav");
    }
    WavFile.write(pcm, file);
    return file.toString();
  }

  @Override
  public void close() {
    speaker.close();
  }
}
