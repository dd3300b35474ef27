package tiptoe.session;

import java.io.IOException;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tiptoe.audio.Chunk;
import tiptoe.audio.PassedSound;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;

/** Sound from a file that is kept with the examination as it goes by, but for what is paused. */
public final class KeptSound extends PassedSound {
  private final Consumer<Chunk> keeper;
  private final long base;
  private final BooleanSupplier paused;

  /**
   * @param keeper stores what it is given, or says why not
   * @param seconds of this recording that were kept before the sound begins
   */
  public KeptSound(
      SampleSource source, Consumer<Chunk> keeper, double seconds, BooleanSupplier paused) {
    super(source);
    this.keeper = keeper;
    this.paused = paused;
    this.base = Math.round(seconds * Pcm.RATE);
  }

  @Override
  public Optional<Chunk> next() throws IOException {
    Optional<Chunk> next = source.next();
    if (next.isPresent() && !paused.getAsBoolean()) {
      Chunk chunk = next.get();
      keeper.accept(new Chunk(base + chunk.position(), chunk.lost(), chunk.samples()));
    }
    return next;
  }
}
