package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.TestExtent;

/**
 * The limits are common practice for 16-bit speech: ripple that no ear hears, aliases below the
 * quantisation noise of 16 bits, 6.02 × 16 + 1.76 = 98 dB for a full-scale sine (textbook).
 */
class ResamplerTest {
  @ParameterizedTest
  @ValueSource(ints = {8000, 11025, 22050, 24000, 32000, 44100, 48000, 88200, 96000})
  void passesSpeechWithLessThanATenthOfADecibelOfRipple(int rate) {
    double nyquist = Math.min(rate, Pcm.RATE) / 2.0;
    for (double share = 0.02; share <= 0.92; share += TestExtent.of(15, 5) / 100.0) {
      double gain = gain(rate, share * nyquist);
      assertEquals(0, 20 * Math.log10(gain), 0.1, share * nyquist + " Hz at " + rate);
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {22050, 24000, 32000, 44100, 48000, 88200, 96000})
  void holdsBackWhatWouldFoldDownByAtLeast90Decibels(int rate) {
    for (double hertz = 8000; hertz < 0.499 * rate; hertz += TestExtent.of(3, 1) * 317) {
      double rejection = -20 * Math.log10(gain(rate, hertz));
      assertTrue(rejection > 90, hertz + " Hz comes through at -" + rejection + " dB");
    }
  }

  @ParameterizedTest
  @ValueSource(ints = {8000, 11025})
  void leavesNoImagesAboveTheSourcesOwnBand(int rate) {
    double hertz = 0.4 * rate;
    Pcm out = Signals.pcm(resample(Signals.sine(hertz, rate, 1, 0.9), rate));
    Pcm middle = out.slice(0.1, 0.9);
    assertEquals(0.9, Goertzel.amplitude(middle, hertz), 0.01);
    assertTrue(Goertzel.decibels(middle, rate - hertz) < -90);
  }

  /** A sweep from 8.4 kHz to 23.6 kHz: everything that comes out is alias. */
  @Test
  void letsASweepAboveTheBandVanish() {
    int rate = 48_000;
    float[] sweep = new float[2 * rate];
    double phase = 0;
    for (int i = 0; i < sweep.length; i++) {
      phase += 2 * Math.PI * (8_400 + 15_200.0 * i / sweep.length) / rate;
      // Faded in and out: a sudden start is no longer band-limited.
      double edge = Math.min(1, Math.min(i, sweep.length - 1 - i) / 4800.0);
      sweep[i] = (float) ((0.5 - 0.5 * Math.cos(Math.PI * edge)) * Math.sin(phase));
    }
    float[] out = resample(sweep, rate);
    for (int at = 0; at + 160 <= out.length; at += 160) {
      double level = 20 * Math.log10(Math.max(1e-9, Signals.rms(out, at, at + 160)));
      assertTrue(level < -90, level + " dB at " + at);
    }
  }

  @ParameterizedTest
  @CsvSource({
    "8000, 8000, 16000",
    "44100, 44100, 16000",
    "48000, 4, 2",
    "96000, 7, 2",
    "11025, 1, 2"
  })
  void keepsTheLength(int rate, int samples, int expected) {
    assertEquals(expected, resample(new float[samples], rate).length);
  }

  @Test
  void givesNothingForNothing() {
    assertEquals(0, resample(new float[0], 48_000).length);
  }

  @ParameterizedTest
  @ValueSource(ints = {8000, 44100, 96000})
  void keepsTheTiming(int rate) {
    float[] click = new float[rate];
    Arrays.fill(click, rate / 2, rate / 2 + rate / 1000, 1);
    float[] out = resample(click, rate);
    double weight = 0;
    double centre = 0;
    for (int i = 0; i < out.length; i++) {
      weight += out[i];
      centre += (double) i * out[i];
    }
    double expected = 0.5 + (rate / 1000 - 1) / 2.0 / rate;
    assertEquals(expected, centre / weight / Pcm.RATE, 0.5 / Pcm.RATE);
  }

  @Test
  void givesTheSameForAnyDivisionIntoPieces() {
    int rate = 44_100;
    float[] wave = Signals.sine(1000, rate, 0.5, 0.5);
    float[] whole = resample(wave, rate);
    Random random = new Random(7);
    Resampler resampler = new Resampler(rate, Pcm.RATE);
    float[] pieced = new float[0];
    for (int at = 0; at < wave.length; ) {
      int end = Math.min(wave.length, at + random.nextInt(3000));
      pieced = joined(pieced, resampler.push(Arrays.copyOfRange(wave, at, end)));
      at = end;
    }
    assertArrayEquals(whole, joined(pieced, resampler.finish()));
  }

  @Test
  void takesRatesThatShareNoFactor() {
    assertEquals(1, gain(22_051, 1000), 0.002);
  }

  private static double gain(int rate, double hertz) {
    float[] out = resample(Signals.sine(hertz, rate, 0.4, 1), rate);
    // Away from both ends, where the sine is cut off; 1/√2 is the RMS of a sine.
    return Signals.rms(out, out.length / 4, 3 * out.length / 4) * Math.sqrt(2);
  }

  private static float[] resample(float[] wave, int rate) {
    Resampler resampler = new Resampler(rate, Pcm.RATE);
    return joined(resampler.push(wave), resampler.finish());
  }

  private static float[] joined(float[] first, float[] second) {
    float[] all = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, all, first.length, second.length);
    return all;
  }
}
