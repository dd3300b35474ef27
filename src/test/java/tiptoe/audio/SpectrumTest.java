package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.Random;
import org.apache.commons.math3.transform.DftNormalization;
import org.apache.commons.math3.transform.FastFourierTransformer;
import org.apache.commons.math3.transform.TransformType;
import org.junit.jupiter.api.Test;

class SpectrumTest {
  private static final int LENGTH = 2048;

  @Test
  void isTheTransformOfTheWholeLength() {
    Random random = new Random(1);
    Spectrum spectrum = new Spectrum(LENGTH);
    for (int samples : new int[] {512, LENGTH, 2}) {
      double[] sound = random.doubles(samples, -32768, 32767).toArray();
      double[][] whole = new double[2][LENGTH];
      System.arraycopy(sound, 0, whole[0], 0, samples);
      FastFourierTransformer.transformInPlace(
          whole, DftNormalization.STANDARD, TransformType.FORWARD);
      spectrum.take(sound);
      for (int bin = 0; bin <= LENGTH / 2; bin++) {
        assertEquals(whole[0][bin], spectrum.real(bin), 1e-6);
        assertEquals(whole[1][bin], spectrum.imaginary(bin), 1e-6);
      }
    }
  }
}
