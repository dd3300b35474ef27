package tiptoe.audio;

import java.util.Arrays;
import java.util.OptionalDouble;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/**
 * Makes a baby's cry fainter: where {@link CryPitch} hears one, its partials are turned down by 14
 * dB. Where it hears none, and it seldom takes a voice for one, sound comes out to the last bit as
 * it went in. Comes 24 ms late; gives as many samples as it takes, together with {@link #finish}.
 */
public final class CryFilter {
  /** Samples of 16 kHz that are looked at together, 32 ms: a cry's pitch soon moves on. */
  private static final int FRAME = 512;

  private static final int HOP = FRAME / 4;

  /** So much longer is the transform, for a pitch to be told finely. */
  private static final int FINER = 4;

  /** Amplitude that is left of a partial. */
  private static final double LEFT = 0.2;

  /** How far around a partial it is turned down, in Hz: the window spreads it so wide. */
  private static final double AROUND = 36;

  /** What the squares of the overlapping windows sum to. */
  private static final double OVERLAP = 1.5;

  private final double[] window = new double[FRAME];
  private final double[] latest = new double[FRAME];
  private final double[] removed = new double[FRAME];
  private final double[] windowed = new double[FRAME];
  private final Spectrum spectrum = new Spectrum(FRAME * FINER);
  private final double[][] unwanted = new double[2][FRAME];
  private final CryPitch pitch = new CryPitch((double) Pcm.RATE / (FRAME * FINER));
  private OptionalDouble heard = OptionalDouble.empty();
  private int waiting;
  private int early = FRAME - HOP;

  public CryFilter() {
    for (int i = 0; i < FRAME; i++) {
      window[i] = 0.5 - 0.5 * Math.cos(2 * Math.PI * i / FRAME); // Hann, periodic
    }
  }

  /** Takes more sound, 16 bit at 16 kHz, and gives what is ready; the last 24 ms stay inside. */
  public short[] apply(short[] samples) {
    short[] ready = new short[samples.length + HOP];
    int given = 0;
    for (short sample : samples) {
      latest[FRAME - HOP + waiting] = sample;
      if (++waiting == HOP) {
        waiting = 0;
        given += hop(ready, given);
      }
    }
    return Arrays.copyOf(ready, given);
  }

  /** Gives what is still inside; nothing can come after it. */
  public short[] finish() {
    int inside = FRAME - HOP - early + waiting;
    return Arrays.copyOf(apply(new short[FRAME]), inside);
  }

  /** The pitch of the cry that is turned down, in Hz; empty where there is none. */
  public OptionalDouble pitch() {
    return heard;
  }

  private int hop(short[] ready, int at) {
    heard = pitch.of(logarithms());
    heard.ifPresent(this::remove);
    int given = Math.max(0, HOP - early);
    for (int i = HOP - given; i < HOP; i++) {
      long left = Math.round(latest[i] - removed[i]);
      ready[at++] = (short) Math.max(Short.MIN_VALUE, Math.min(Short.MAX_VALUE, left));
    }
    early -= HOP - given;
    System.arraycopy(latest, HOP, latest, 0, FRAME - HOP);
    System.arraycopy(removed, HOP, removed, 0, FRAME - HOP);
    Arrays.fill(removed, FRAME - HOP, FRAME, 0);
    return given;
  }

  /** Natural logarithms of the amplitudes of the latest sound and 1, which is next to nothing. */
  private double[] logarithms() {
    for (int i = 0; i < FRAME; i++) {
      windowed[i] = latest[i] * window[i];
    }
    spectrum.take(windowed);
    double[] logarithms = new double[pitch.bins()];
    for (int bin = 0; bin < logarithms.length; bin++) {
      double real = spectrum.real(bin);
      double imaginary = spectrum.imaginary(bin);
      logarithms[bin] = Math.log(Math.sqrt(real * real + imaginary * imaginary) + 1);
    }
    return logarithms;
  }

  private void remove(double hertz) {
    double step = (double) Pcm.RATE / FRAME;
    for (int bin = 0; bin < FRAME; bin++) {
      int upright = Math.min(bin, FRAME - bin); // the upper half mirrors the lower one
      double frequency = upright * step;
      long partial = Math.round(frequency / hertz);
      boolean near = partial > 0 && Math.abs(frequency - partial * hertz) <= AROUND;
      double part = near ? 1 - LEFT : 0;
      double sign = bin == upright ? 1 : -1;
      unwanted[0][bin] = part * spectrum.real(upright * FINER);
      unwanted[1][bin] = part * sign * spectrum.imaginary(upright * FINER);
    }
    FastFourierTransformer.transformInPlace(
        unwanted, DftNormalization.STANDARD, TransformType.INVERSE);
    for (int i = 0; i < FRAME; i++) {
      removed[i] += unwanted[0][i] * window[i] / OVERLAP;
    }
  }
}
