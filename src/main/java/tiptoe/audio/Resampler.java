package tiptoe.audio;

import java.util.Arrays;

/**
 * Changes the sample rate by the ratio of two whole numbers with one band-limiting low-pass filter:
 * a Kaiser-windowed sinc, evaluated only at the output samples (the polyphase form). After
 * Crochiere and Rabiner, Multirate Digital Signal Processing (1983); the window's width and shape
 * by Kaiser's formulas, as printed in Oppenheim and Schafer, Discrete-Time Signal Processing.
 *
 * <p>Flat up to 92 % of the lower Nyquist frequency, at least 96 dB down from that frequency on.
 * The output keeps the input's timing: the first output sample stands at the first input sample.
 */
final class Resampler {
  private static final double PASS = 0.92;
  private static final double STOP_BAND_DB = 98;

  private final int up;
  private final int down;
  private final int half;
  private final double cutOff;
  private final float[][] phases;

  /** Input still needed; {@code history[0]} is the input {@code half - 1} samples before base. */
  private float[] history;

  private int held;
  private long base;
  private long taken;
  private long made;

  /** From one rate to another, both in Hz. */
  Resampler(int from, int to) {
    int common = gcd(from, to);
    up = to / common;
    down = from / common;
    double nyquist = 0.5 * Math.min(1, (double) to / from);
    double width = 2 * Math.PI * nyquist * (1 - PASS);
    half = (int) Math.ceil((STOP_BAND_DB - 8) / (2.285 * width) / 2);
    phases = new float[up][];
    cutOff = nyquist * (1 + PASS) / 2;
    held = half - 1;
    history = new float[4 * half];
  }

  /** Takes the next input and returns all output that it completes, possibly none. */
  float[] push(float[] input) {
    append(input, input.length);
    taken += input.length;
    return drain(Long.MAX_VALUE);
  }

  /** The rest of the output, once all input is in. */
  float[] finish() {
    append(new float[half], half);
    return drain((taken * up + down - 1) / down);
  }

  private void append(float[] input, int length) {
    if (held + length > history.length) {
      history = Arrays.copyOf(history, Math.max(2 * history.length, held + length));
    }
    System.arraycopy(input, 0, history, held, length);
    held += length;
  }

  /** Computes outputs while the input reaches half a filter past them. */
  private float[] drain(long limit) {
    long reach = base + held - (half - 1) - half;
    float[] output = new float[(int) Math.max(0, (reach * up) / down + 2 - made)];
    int count = 0;
    while (made < limit && made * down / up < reach) {
      long whole = made * down / up;
      int start = (int) (whole - base);
      output[count++] = dot(phase((int) (made * down % up)), start);
      made++;
    }
    discard((int) (Math.min(made * down / up, reach) - base));
    return Arrays.copyOf(output, count);
  }

  private float dot(float[] taps, int start) {
    float sum = 0;
    for (int i = 0; i < taps.length; i++) {
      sum += taps[i] * history[start + i];
    }
    return sum;
  }

  private void discard(int count) {
    if (count > 0) {
      System.arraycopy(history, count, history, 0, held - count);
      held -= count;
      base += count;
    }
  }

  /** The filter for outputs that stand {@code phase / up} behind an input sample. */
  private float[] phase(int phase) {
    if (phases[phase] == null) {
      phases[phase] = design((double) phase / up);
    }
    return phases[phase];
  }

  private float[] design(double offset) {
    double beta = 0.1102 * (STOP_BAND_DB - 8.7);
    double[] taps = new double[2 * half];
    double sum = 0;
    for (int i = 0; i < taps.length; i++) {
      double distance = i - (half - 1) - offset;
      double edge = distance / half;
      double window = bessel(beta * Math.sqrt(Math.max(0, 1 - edge * edge))) / bessel(beta);
      taps[i] = 2 * cutOff * sinc(2 * cutOff * distance) * window;
      sum += taps[i];
    }
    // Equal gain for every phase: otherwise a constant input would ripple.
    float[] scaled = new float[taps.length];
    for (int i = 0; i < taps.length; i++) {
      scaled[i] = (float) (taps[i] / sum);
    }
    return scaled;
  }

  private static double sinc(double x) {
    return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
  }

  /** Modified Bessel function of the first kind, order 0, by its power series. */
  private static double bessel(double x) {
    double term = 1;
    double sum = 1;
    for (int k = 1; term > 1e-12 * sum; k++) {
      term *= (x / (2 * k)) * (x / (2 * k));
      sum += term;
    }
    return sum;
  }

  private static int gcd(int a, int b) {
    return b == 0 ? a : gcd(b, a % b);
  }
}
