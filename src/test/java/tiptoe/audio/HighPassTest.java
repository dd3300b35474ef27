package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class HighPassTest {
  /** The textbook response of a Butterworth high-pass of order n: 1 / √(1 + (fc / f)^2n). */
  @ParameterizedTest
  @ValueSource(doubles = {40, 50, 60, 80, 120, 200, 1000, 4000})
  void hasTheResponseOfAFourthOrderButterworth(double hertz) {
    Pcm out = Pcm.of(new HighPass(80).apply(Signals.tone(hertz, 3, 0.5).samples()));
    double expected = 1 / Math.sqrt(1 + Math.pow(80 / hertz, 8));
    double gain = Goertzel.amplitude(out.slice(1, 3), hertz) / 0.5;
    assertEquals(20 * Math.log10(expected), 20 * Math.log10(gain), 0.1);
  }

  @Test
  void takesOutDirectCurrent() {
    short[] offset = new short[Pcm.RATE];
    Arrays.fill(offset, (short) 5000);
    Pcm out = Pcm.of(new HighPass().apply(offset));
    assertTrue(out.slice(0.5, 1).level().isSilent());
  }

  @Test
  void givesTheSameForAnyChunks() {
    Pcm noise = Signals.noise(1, 0.1, 5);
    short[] whole = new HighPass().apply(noise.samples());
    HighPass pieced = new HighPass();
    short[] first = pieced.apply(noise.slice(0, 0.3).samples());
    short[] rest = pieced.apply(noise.slice(0.3, 1).samples());
    assertArrayEquals(whole, Pcm.join(Pcm.of(first), Pcm.of(rest)).samples());
  }

  @Test
  void filtersASourceChunkByChunk() throws IOException {
    SampleFilter filter = samples -> new short[] {(short) samples.length};
    SampleFilter twice = samples -> new short[] {(short) (2 * samples[0])};
    try (SampleSource source = Signals.chunks(1600, 800).through(filter.then(twice))) {
      assertArrayEquals(new short[] {3200}, source.next().orElseThrow().samples());
      Chunk second = source.next().orElseThrow();
      assertEquals(1600, second.position());
      assertArrayEquals(new short[] {1600}, second.samples());
      assertTrue(source.next().isEmpty());
    }
  }

  @Test
  void refusesFrequenciesThatItCannotFilter() {
    IllegalArgumentException e =
        assertThrows(IllegalArgumentException.class, () -> new HighPass(9000));
    assertEquals("expected 10 to 1000 Hz, found 9000.0 Hz", e.getMessage());
  }
}
