package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.TestExtent;

class CryFilterTest {
  private static final Path SHARED = Path.of("../shared/audio");

  /** So much sound brings a new pitch. */
  private static final int HOP = 128;

  @ParameterizedTest
  @ValueSource(ints = {90, 120, 150, 180, 210})
  void leavesAVoiceNearlyAsItIs(int hertz) {
    // harder than any voice: nothing but partials, and all the time
    Pcm voice = partials(t -> hertz * (1 + 0.1 * Math.sin(2 * Math.PI * t)), 3);
    assertEquals(level(voice), level(Pcm.of(filtered(voice.samples()))), 1.5);
  }

  @Test
  void leavesNoiseAsItIsToTheLastBit() {
    short[] noise = Signals.noise(3, 0.1, 5).samples();
    assertArrayEquals(noise, filtered(noise));
  }

  @ParameterizedTest
  @ValueSource(ints = {398, 450, 496, 583})
  void turnsDownWhatHasThePitchOfACryAlsoWhileItGlides(int hertz) {
    Pcm cry = partials(t -> hertz * (1 + 0.15 * Math.sin(Math.PI * t)), 3);
    Pcm left = Pcm.of(filtered(cry.samples()));
    double down = level(cry) - level(left);
    // 20 log10 0.2 is 14 dB; while the pitch glides, partials spread beyond what is turned down
    assertTrue(down > 9 && down < 14.1, down + " dB");
  }

  @Property(tries = 30)
  void givesTheSameInWhateverPiecesSoundComes(
      @ForAll @IntRange(max = 9000) int length, @ForAll @IntRange(min = 1, max = 1200) int piece) {
    short[] cry = Arrays.copyOf(partials(t -> 450, 0.6).samples(), length);
    CryFilter filter = new CryFilter();
    List<short[]> out = new ArrayList<>();
    for (int at = 0; at < length; at += piece) {
      out.add(filter.apply(Arrays.copyOfRange(cry, at, Math.min(length, at + piece))));
    }
    out.add(filter.finish());
    assertArrayEquals(filtered(cry), joined(out));
    assertEquals(length, joined(out).length);
  }

  /** Recorded cries and recorded readers; sources in {@code ../shared/reference}. */
  @Test
  void takesMuchOutOfRecordedCriesAndLittleOutOfRecordedVoices() throws IOException {
    assumeTrue(Files.isDirectory(SHARED), "skipped: no recordings in ../shared/audio");
    double cries = taken("cry");
    double voices = taken("off-script");
    String told = "%.1f dB of cries and %.1f dB of voices taken out".formatted(cries, voices);
    System.out.println(told);
    assertTrue(cries > -5 && voices < -14, told); // measured: -3.5 and -16
  }

  /**
   * The median pitch that is followed in recorded cries is between the mean of the lowest and the
   * mean of the highest pitch of a cry, 398 and 583 Hz (Michelsson et al. 2002, as in {@link
   * CryPitch}).
   */
  @Test
  void followsThePitchThatIsPublishedForCries() throws IOException {
    assumeTrue(Files.isDirectory(SHARED), "skipped: no recordings in ../shared/audio");
    List<Double> heard = new ArrayList<>();
    for (Pcm cry : recordings("cry")) {
      heard.addAll(pitches(cry));
    }
    double median = heard.stream().sorted().skip(heard.size() / 2).findFirst().orElseThrow();
    assertTrue(median > 398 && median < 583, median + " Hz");
  }

  private static List<Double> pitches(Pcm sound) {
    List<Double> heard = new ArrayList<>();
    CryFilter filter = new CryFilter();
    short[] samples = sound.samples();
    for (int at = 0; at + HOP <= samples.length; at += HOP) {
      filter.apply(Arrays.copyOfRange(samples, at, at + HOP));
      filter.pitch().ifPresent(heard::add);
    }
    return heard;
  }

  /** What is taken out, in dB of the whole. */
  private static double taken(String folder) throws IOException {
    double out = 0;
    double all = 0;
    for (Pcm sound : recordings(folder)) {
      short[] before = sound.samples();
      short[] after = filtered(before);
      for (int i = 0; i < before.length; i++) {
        out += Math.pow(before[i] - after[i], 2);
        all += Math.pow(before[i], 2);
      }
    }
    return Level.decibels(Math.sqrt(out / all));
  }

  private static List<Pcm> recordings(String folder) throws IOException {
    List<Pcm> all = new ArrayList<>();
    try (Stream<Path> files = Files.list(SHARED.resolve(folder))) {
      for (Path file : files.filter(f -> f.toString().endsWith(".wav")).sorted().toList()) {
        Pcm whole = AudioFile.read(file);
        all.add(whole.slice(0, Math.min(TestExtent.of(7, 20), whole.seconds())));
      }
    }
    return all;
  }

  private static short[] filtered(short[] sound) {
    CryFilter filter = new CryFilter();
    return joined(List.of(filter.apply(sound), filter.finish()));
  }

  private static short[] joined(List<short[]> pieces) {
    short[] whole = new short[pieces.stream().mapToInt(p -> p.length).sum()];
    int at = 0;
    for (short[] piece : pieces) {
      System.arraycopy(piece, 0, whole, at, piece.length);
      at += piece.length;
    }
    return whole;
  }

  /** A tone with all its partials up to 7 kHz, each half as strong an octave up. */
  private static Pcm partials(DoubleUnaryOperator hertz, double seconds) {
    float[] wave = new float[Pcm.samples(seconds)];
    double phase = 0;
    for (int i = 0; i < wave.length; i++) {
      double now = hertz.applyAsDouble((double) i / Pcm.RATE);
      phase += 2 * Math.PI * now / Pcm.RATE;
      for (int partial = 1; partial * now < 7000; partial++) {
        wave[i] += (float) (0.1 / partial * Math.sin(partial * phase));
      }
    }
    return Signals.pcm(wave);
  }

  /** The middle of the sound: a cry is followed only once it has begun. */
  private static double level(Pcm sound) {
    return Level.of(sound.slice(0.5, sound.seconds() - 0.5).samples()).rmsDb();
  }
}
