package tiptoe.session;

import java.io.IOException;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tiptoe.audio.Chunk;
import tiptoe.audio.PassedSound;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;
import tiptoe.audio.SegmentStore;

/** Sound from a file that is kept with the examination as it goes by, but for what is paused. */
public final class KeptSound extends PassedSound {
  private final SegmentStore store;
  private final long base;
  private final BooleanSupplier paused;

  /**
   * @param seconds of this recording that were kept before the sound begins
   */
  public KeptSound(
      SampleSource source, SegmentStore store, double seconds, BooleanSupplier paused) {
    super(source);
    this.store = store;
    this.paused = paused;
    this.base = Math.round(seconds * Pcm.RATE);
  }

  @Override
  public Optional<Chunk> next() throws IOException {
    Optional<Chunk> next = source.next();
    if (next.isPresent() && !paused.getAsBoolean()) {
      Chunk chunk = next.get();
      store.append(new Chunk(base + chunk.position(), chunk.lost(), chunk.samples()));
    }
    return next;
  }
}
