package tiptoe.session;

import java.io.IOException;
import java.util.Optional;
import java.util.function.BooleanSupplier;
import tiptoe.audio.Chunk;
import tiptoe.audio.PassedSound;
import tiptoe.audio.SampleSource;

/** Sound without what comes while the examination is paused, since none of that is to be kept. */
public final class UnpausedSound extends PassedSound {
  private final BooleanSupplier paused;

  public UnpausedSound(SampleSource source, BooleanSupplier paused) {
    super(source);
    this.paused = paused;
  }

  @Override
  public Optional<Chunk> next() throws IOException {
    long dropped = 0;
    Optional<Chunk> next = source.next();
    while (next.isPresent() && paused.getAsBoolean()) {
      dropped += next.get().lost() + next.get().samples().length;
      next = source.next();
    }
    long before = dropped;
    return next.map(chunk -> new Chunk(chunk.position(), chunk.lost() + before, chunk.samples()));
  }
}
