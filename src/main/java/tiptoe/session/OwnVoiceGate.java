package tiptoe.session;

import java.io.IOException;
import java.util.Optional;
import java.util.Random;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;
import tiptoe.audio.Chunk;
import tiptoe.audio.PassedSound;
import tiptoe.audio.SampleSource;

/**
 * Sound in which it is quiet while the tool speaks, so that it does not take down its own voice.
 * Time goes on in it, and what is kept of the sound comes from elsewhere.
 */
final class OwnVoiceGate extends PassedSound {
  /** The noise of a quiet room, about -84 dB; bare zeros are no sound that models were made for. */
  private static final double QUIET = 2;

  private final BooleanSupplier speaks;
  private final Consumer<Boolean> changed;
  private final Random random = new Random(1);
  private boolean spoke;

  /**
   * @param speaks whether the tool speaks now
   * @param changed told when it begins and ends
   */
  OwnVoiceGate(SampleSource source, BooleanSupplier speaks, Consumer<Boolean> changed) {
    super(source);
    this.speaks = speaks;
    this.changed = changed;
  }

  @Override
  public Optional<Chunk> next() throws IOException {
    Optional<Chunk> next = source.next();
    boolean now = speaks.getAsBoolean();
    if (now != spoke) {
      spoke = now;
      changed.accept(now);
    }
    return now ? next.map(this::quiet) : next;
  }

  private Chunk quiet(Chunk chunk) {
    short[] samples = new short[chunk.samples().length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) Math.round(QUIET * random.nextGaussian());
    }
    return new Chunk(chunk.position(), chunk.lost(), samples);
  }
}
