package tiptoe.audio;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import java.util.function.BooleanSupplier;

/**
 * Holds sound back while nothing but a steady sound has come for 3 s, so that a quiet room costs no
 * decoding. The last second is kept and handed over with the first louder sound, or the beginning
 * of a word would be lost. Talk and crying are never steady for so long.
 */
public final class QuietGate {
  /** Samples over which one level is taken: 0.1 s. */
  private static final int BLOCK = Pcm.RATE / 10;

  /** Blocks that must be alike: 3 s. */
  private static final int ALIKE = 30;

  /** How far apart the levels of a steady sound may be, in dB. */
  private static final double STEADY = 6;

  /** By how much the first louder sound exceeds what was steady, in dB. */
  private static final double LOUDER = 3;

  /** Levels below this are all silence, in dB from full scale. */
  private static final double SILENCE = -70;

  /** Samples that are kept: 1 s. */
  private static final int KEPT = Pcm.RATE;

  private final Deque<Double> levels = new ArrayDeque<>();
  private final Deque<short[]> held = new ArrayDeque<>();
  private int heldSamples;
  private boolean shut;
  private double loudest;
  private double energy;
  private int counted;
  private long skipped;

  /**
   * Takes the next sound.
   *
   * @param samples at 16 kHz; not copied
   * @param busy whether words are being said; asked only where the gate would shut
   * @return what is to be heard now, in order; empty while the room is quiet
   */
  public List<short[]> pass(short[] samples, BooleanSupplier busy) {
    boolean louder = measure(samples);
    if (shut && louder) {
      List<short[]> all = open();
      all.add(samples);
      return all;
    }
    if (shut) {
      hold(samples);
      return List.of();
    }
    if (isSteady()) {
      shut = !busy.getAsBoolean();
    }
    return List.of(samples);
  }

  private List<short[]> open() {
    List<short[]> all = new ArrayList<>(held);
    held.clear();
    heldSamples = 0;
    levels.clear();
    shut = false;
    return all;
  }

  /** Whether sound is held back: then no words are being said. */
  public boolean isShut() {
    return shut;
  }

  /** Samples that were never handed over, since the start. */
  public long skipped() {
    return skipped;
  }

  private void hold(short[] samples) {
    held.add(samples);
    heldSamples += samples.length;
    while (heldSamples - held.peek().length >= KEPT) {
      int least = held.remove().length;
      heldSamples -= least;
      skipped += least;
    }
  }

  private boolean isSteady() {
    if (levels.size() < ALIKE) {
      return false;
    }
    loudest = Collections.max(levels);
    return loudest - Collections.min(levels) <= STEADY;
  }

  /** Takes the levels of the blocks that these samples complete; gives whether one was louder. */
  private boolean measure(short[] samples) {
    boolean louder = false;
    for (short sample : samples) {
      energy += (double) sample * sample;
      if (++counted == BLOCK) {
        double rms = Math.sqrt(energy / BLOCK) / Pcm.FULL_SCALE;
        double level = Math.max(SILENCE, 20 * Math.log10(rms));
        louder |= level > loudest + LOUDER;
        levels.add(level);
        if (levels.size() > ALIKE) {
          levels.remove();
        }
        energy = 0;
        counted = 0;
      }
    }
    return louder;
  }
}
