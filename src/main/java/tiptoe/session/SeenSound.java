package tiptoe.session;

import java.io.IOException;
import java.util.Optional;
import tiptoe.audio.Chunk;
import tiptoe.audio.Level;
import tiptoe.audio.PassedSound;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;

/** Sound that a view sees go by, and that ends when the user leaves. */
public final class SeenSound extends PassedSound {
  private final ExamView view;
  private final double offset;

  /**
   * @param offset second of the examination at which the sound begins
   */
  SeenSound(SampleSource source, ExamView view, double offset) {
    super(source);
    this.view = view;
    this.offset = offset;
  }

  @Override
  public Optional<Chunk> next() throws IOException {
    Optional<Chunk> next = view.left() ? Optional.empty() : source.next();
    next.ifPresent(
        chunk -> {
          Level level = Level.of(chunk.samples());
          double from = offset + chunk.seconds();
          double to = from + (double) chunk.samples().length / Pcm.RATE;
          view.sound(level.rmsDb(), level.isClipping(), from, to);
        });
    return next;
  }
}
