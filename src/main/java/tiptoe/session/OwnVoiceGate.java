package tiptoe.session;

import java.io.IOException;
import java.util.Optional;
import java.util.Random;
import java.util.function.Consumer;
import java.util.function.DoubleConsumer;
import java.util.function.DoublePredicate;
import java.util.function.DoubleSupplier;
import tiptoe.audio.Chunk;
import tiptoe.audio.PassedSound;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;

/**
 * Sound in which it is quiet while the tool speaks, so that it does not take down its own voice.
 * Time goes on in it, and what is kept of the sound comes from elsewhere.
 */
final class OwnVoiceGate extends PassedSound {
  /** The noise of a quiet room, about -84 dB; bare zeros are no sound that models were made for. */
  private static final double QUIET = 2;

  private final DoublePredicate spoke;
  private final DoubleSupplier captured;
  private final Consumer<Boolean> changed;
  private final DoubleConsumer until;
  private final Random random = new Random(1);
  private boolean speaks;

  /**
   * @param spoke whether the tool spoke so many seconds ago
   * @param captured up to which second sound came in: what is decoded may be older, where the
   *     machine is slow
   * @param changed told when it begins and ends
   * @param until told up to which second of the sound it spoke
   */
  OwnVoiceGate(
      SampleSource source,
      DoublePredicate spoke,
      DoubleSupplier captured,
      Consumer<Boolean> changed,
      DoubleConsumer until) {
    super(source);
    this.spoke = spoke;
    this.captured = captured;
    this.changed = changed;
    this.until = until;
  }

  @Override
  public Optional<Chunk> next() throws IOException {
    Optional<Chunk> next = source.next();
    boolean now = spoke.test(0);
    if (now != speaks) {
      speaks = now;
      changed.accept(now);
    }
    return next.map(chunk -> isOwn(chunk) ? quiet(chunk) : chunk);
  }

  private boolean isOwn(Chunk chunk) {
    double now = captured.getAsDouble();
    return spoke.test(Math.max(0, now - chunk.seconds()))
        || spoke.test(Math.max(0, now - (double) chunk.end() / Pcm.RATE));
  }

  private Chunk quiet(Chunk chunk) {
    until.accept((double) chunk.end() / Pcm.RATE);
    short[] samples = new short[chunk.samples().length];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) Math.round(QUIET * random.nextGaussian());
    }
    return new Chunk(chunk.position(), chunk.lost(), samples);
  }
}
