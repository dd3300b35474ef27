package tiptoe.audio;

import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;

/**
 * The spectrum of a piece of sound: of real values, by a complex transform of half their number,
 * which takes half the work. Bins that nobody asks for are not worked out.
 */
final class Spectrum {
  private final double[][] halves;
  private final double[] cosines;
  private final double[] sines;

  /**
   * @param length of the transform, a power of two
   */
  Spectrum(int length) {
    int half = length / 2;
    halves = new double[2][half];
    cosines = new double[half + 1];
    sines = new double[half + 1];
    for (int bin = 0; bin <= half; bin++) {
      cosines[bin] = Math.cos(Math.PI * bin / half);
      sines[bin] = Math.sin(Math.PI * bin / half);
    }
  }

  /** Takes the next piece, an even number of samples; what it lacks of the length is silence. */
  void take(double[] samples) {
    int half = halves[0].length;
    for (int i = 0; i < half; i++) {
      boolean there = 2 * i < samples.length;
      halves[0][i] = there ? samples[2 * i] : 0;
      halves[1][i] = there ? samples[2 * i + 1] : 0;
    }
    FastFourierTransformer.transformInPlace(
        halves, DftNormalization.STANDARD, TransformType.FORWARD);
  }

  /** The real part of a bin, 0 to half the length. */
  double real(int bin) {
    int one = bin % halves[0].length;
    int other = (halves[0].length - one) % halves[0].length;
    return (halves[0][one]
            + halves[0][other]
            + cosines[bin] * (halves[1][one] + halves[1][other])
            - sines[bin] * (halves[0][one] - halves[0][other]))
        / 2;
  }

  /** The imaginary part of a bin, 0 to half the length. */
  double imaginary(int bin) {
    int one = bin % halves[0].length;
    int other = (halves[0].length - one) % halves[0].length;
    return (halves[1][one]
            - halves[1][other]
            - sines[bin] * (halves[1][one] + halves[1][other])
            - cosines[bin] * (halves[0][one] - halves[0][other]))
        / 2;
  }
}
