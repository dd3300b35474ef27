package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.TestExtent;

class AudioFileTest {
  private static final double AMPLITUDE = 0.5;
  private static final double HERTZ = 1000;

  @TempDir Path folder;

  static Stream<Arguments> kindsOfWav() {
    List<Arguments> kinds = new ArrayList<>();
    for (int rate : new int[] {8000, 16_000, 44_100, 48_000, 96_000}) {
      for (int channels : new int[] {1, 2}) {
        for (boolean extensible : new boolean[] {false, true}) {
          for (int bits : new int[] {8, 16, 24, 32}) {
            kinds.add(Arguments.of(WavBytes.PCM, bits, channels, rate, extensible));
          }
          kinds.add(Arguments.of(WavBytes.FLOAT, 32, channels, rate, extensible));
          kinds.add(Arguments.of(WavBytes.FLOAT, 64, channels, rate, extensible));
        }
      }
    }
    return kinds.stream();
  }

  @ParameterizedTest
  @MethodSource("kindsOfWav")
  void readsEveryKindOfWavAs16KilohertzMono(
      int tag, int bits, int channels, int rate, boolean extensible) throws IOException {
    float[] wave = Signals.sine(HERTZ, rate, 0.5, AMPLITUDE);
    byte[] data = WavBytes.samples(repeated(wave, channels), tag, bits);
    Path file = folder.resolve("tone.wav");
    Files.write(
        file,
        extensible
            ? WavBytes.extensible(tag, bits, channels, rate, data)
            : WavBytes.plain(tag, bits, channels, rate, data));

    Pcm pcm = AudioFile.read(file);

    assertEquals(Pcm.RATE, pcm.sampleRate());
    assertEquals(8000, pcm.samples().length);
    // 1/127 is the coarsest step, of 8-bit samples.
    assertEquals(AMPLITUDE, Goertzel.amplitude(pcm, HERTZ), 1 / 127.0);
  }

  @ParameterizedTest
  @CsvSource({
    "AIFF, 8, true",
    "AIFF, 16, true",
    "AIFF, 24, true",
    "AU, 16, true",
    "AU, 24, true",
    "WAVE, 16, false"
  })
  void readsWhatJavaSoundWrites(String kind, int bits, boolean bigEndian) throws IOException {
    float[] wave = Signals.sine(HERTZ, 22_050, 0.5, AMPLITUDE);
    byte[] data = WavBytes.samples(wave, WavBytes.PCM, bits);
    AudioFormat format = new AudioFormat(22_050, bits, 1, true, false);
    if (bits == 8) {
      for (int i = 0; i < data.length; i++) {
        data[i] ^= (byte) 0x80;
      }
    }
    AudioInputStream plain =
        new AudioInputStream(new ByteArrayInputStream(data), format, wave.length);
    AudioFormat target = new AudioFormat(22_050, bits, 1, true, bigEndian);
    AudioFileFormat.Type type =
        switch (kind) {
          case "AIFF" -> AudioFileFormat.Type.AIFF;
          case "AU" -> AudioFileFormat.Type.AU;
          default -> AudioFileFormat.Type.WAVE;
        };
    Path file = folder.resolve("tone.sound");
    AudioSystem.write(AudioSystem.getAudioInputStream(target, plain), type, file.toFile());

    assertEquals(AMPLITUDE, Goertzel.amplitude(AudioFile.read(file), HERTZ), 1 / 127.0);
  }

  @ParameterizedTest
  @ValueSource(strings = {"ALAW", "ULAW"})
  void readsTelephoneCodings(String coding) throws IOException {
    AudioFormat plain = new AudioFormat(8000, 16, 1, true, false);
    float[] wave = Signals.sine(HERTZ, 8000, 0.5, AMPLITUDE);
    AudioInputStream in =
        new AudioInputStream(
            new ByteArrayInputStream(WavBytes.samples(wave, WavBytes.PCM, 16)), plain, wave.length);
    AudioFormat coded =
        new AudioFormat(new AudioFormat.Encoding(coding), 8000, 8, 1, 1, 8000, false);
    Path file = folder.resolve("coded.wav");
    AudioSystem.write(
        AudioSystem.getAudioInputStream(coded, in), AudioFileFormat.Type.WAVE, file.toFile());

    assertEquals(AMPLITUDE, Goertzel.amplitude(AudioFile.read(file), HERTZ), 0.01);
  }

  @Test
  void givesBackWhatItWroteBitForBit() throws IOException {
    short[] samples = new short[40_001];
    Random random = new Random(3);
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (short) random.nextInt();
    }
    Path file = folder.resolve("noise.wav");
    AudioFile.write(file, Pcm.of(samples));
    assertArrayEquals(samples, AudioFile.read(file).samples());
  }

  @Test
  void averagesTheChannels() throws IOException {
    float[] stereo = {0.5f, -0.5f, 0.5f, 0.25f};
    byte[] data = WavBytes.samples(stereo, WavBytes.FLOAT, 32);
    Path file = folder.resolve("stereo.wav");
    Files.write(file, WavBytes.plain(WavBytes.FLOAT, 32, 2, Pcm.RATE, data));
    assertArrayEquals(new short[] {0, 12_288}, AudioFile.read(file).samples());
  }

  @Test
  void limitsWhatIsLouderThanFullScale() throws IOException {
    byte[] data = WavBytes.samples(new float[] {2, -3, Float.NaN}, WavBytes.FLOAT, 32);
    Path file = folder.resolve("loud.wav");
    Files.write(file, WavBytes.plain(WavBytes.FLOAT, 32, 1, Pcm.RATE, data));
    assertArrayEquals(new short[] {32_767, -32_768, 0}, AudioFile.read(file).samples());
  }

  @Test
  void handsOutConnectedChunksNoLongerThanAFifthOfASecond() throws IOException {
    Path file = folder.resolve("tone.wav");
    float[] wave = Signals.sine(HERTZ, 44_100, 1.234, AMPLITUDE);
    Files.write(
        file,
        WavBytes.plain(WavBytes.PCM, 16, 1, 44_100, WavBytes.samples(wave, WavBytes.PCM, 16)));
    long expected = 0;
    try (SampleSource source = AudioFile.open(file)) {
      for (Optional<Chunk> next = source.next(); next.isPresent(); next = source.next()) {
        Chunk chunk = next.get();
        assertEquals(expected, chunk.position());
        assertTrue(chunk.samples().length > 0 && chunk.samples().length <= 3200);
        expected = chunk.end();
      }
      assertEquals(Optional.empty(), source.next());
    }
    assertEquals((long) Math.ceil(wave.length * 16_000.0 / 44_100), expected);
  }

  /** What ffmpeg and sox write into the header of a WAV that goes through a pipe. */
  @ParameterizedTest
  @ValueSource(ints = {0xFFFF_FFFF, 0x7FFF_F000})
  void readsToTheEndWhereTheWriterDidNotKnowTheLength(int promised) throws IOException {
    Path file = folder.resolve("piped.wav");
    byte[] format = WavBytes.format(WavBytes.PCM, 16, 1, Pcm.RATE);
    Files.write(file, WavBytes.riff(format, new byte[3200], promised));
    assertEquals(1600, AudioFile.read(file).samples().length);
  }

  @Test
  void saysThatThereIsNoFile() {
    Path file = folder.resolve("nowhere.wav");
    assertEquals("expected an audio file, found nothing at " + file, problem(file));
  }

  @Test
  void saysThatItIsAFolder() {
    assertEquals("expected an audio file, found a folder at " + folder, problem(folder));
  }

  @ParameterizedTest
  @ValueSource(ints = {4000, 7999, 96_001, 192_000})
  void refusesRatesOutside8To96Kilohertz(int rate) throws IOException {
    Path file = folder.resolve("rate.wav");
    Files.write(file, WavBytes.plain(WavBytes.PCM, 16, 1, rate, new byte[3200]));
    assertEquals("expected 8000 to 96000 Hz, found " + rate + " Hz in rate.wav", problem(file));
  }

  /** Whatever a damaged header says, the answer is sound or a problem, never a crash. */
  @Test
  void survivesDamagedHeaders() throws IOException {
    Random random = new Random(11);
    byte[] good = WavBytes.extensible(WavBytes.PCM, 16, 2, 44_100, new byte[4000]);
    Path file = folder.resolve("damaged.wav");
    int tries = TestExtent.of(200, 2000);
    int read = 0;
    for (int i = 0; i < tries; i++) {
      byte[] bad = good.clone();
      for (int changes = 1 + random.nextInt(4); changes > 0; changes--) {
        bad[12 + random.nextInt(56)] = (byte) random.nextInt();
      }
      Files.write(file, bad);
      try {
        AudioFile.read(file);
        read++;
      } catch (AudioProblem e) {
        assertTrue(e.getMessage().startsWith("expected "), e.getMessage());
      }
    }
    assertTrue(read > 0 && read < tries, read + " of " + tries + " were read");
  }

  private static String problem(Path file) {
    return assertThrows(AudioProblem.class, () -> AudioFile.read(file)).getMessage();
  }

  private static float[] repeated(float[] wave, int channels) {
    float[] all = new float[wave.length * channels];
    for (int i = 0; i < all.length; i++) {
      all[i] = wave[i / channels];
    }
    return all;
  }
}
