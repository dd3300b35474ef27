package tiptoe.audio;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioFormat.Encoding;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import javax.sound.sampled.UnsupportedAudioFileException;

/**
 * Audio files: any that Java Sound reads (WAV, AIFF, AU; integers, floats, A-law, µ-law), 8 to 96
 * kHz, any number of channels, come in as 16 kHz mono 16 bit; WAV of that kind goes out.
 */
public final class AudioFile {
  private static final Pattern KNOWN_NAMES =
      Pattern.compile("\\.(wav|wave|aif|aiff|aifc|au|snd)$", Pattern.CASE_INSENSITIVE);

  private static final int LOWEST_RATE = 8_000;
  private static final int HIGHEST_RATE = 96_000;

  /** Data lengths from here on are what programs write into a WAV that they cannot seek in. */
  private static final long UNKNOWN_LENGTH = 0x7FFF_0000L;

  /** Longer recordings are to be read chunk by chunk. */
  private static final int LONGEST_HOURS = 6;

  private AudioFile() {}

  /**
   * A file, or the recordings right in a folder, by name.
   *
   * @throws AudioProblem when a folder holds none
   */
  public static List<Path> in(Path place) throws IOException {
    if (!Files.isDirectory(place)) {
      return List.of(place);
    }
    try (Stream<Path> files = Files.list(place)) {
      List<Path> found =
          files
              .filter(
                  file ->
                      KNOWN_NAMES.matcher(file.getFileName().toString()).find()
                          && Files.isRegularFile(file))
              .sorted()
              .toList();
      if (found.isEmpty()) {
        throw new AudioProblem("expected recordings, found none in " + place);
      }
      return found;
    }
  }

  /** Reads a whole file of at most 6 hours. An hour takes 115 MB. */
  public static Pcm read(Path file) throws IOException {
    try (SampleSource source = open(file)) {
      short[] samples = new short[Pcm.RATE];
      int length = 0;
      for (Optional<Chunk> next = source.next(); next.isPresent(); next = source.next()) {
        short[] chunk = next.get().samples();
        if (length > LONGEST_HOURS * 3600 * Pcm.RATE) {
          throw new AudioProblem(
              "expected at most " + LONGEST_HOURS + " hours, found more in " + file.getFileName());
        }
        if (length + chunk.length > samples.length) {
          samples = Arrays.copyOf(samples, length + length / 2 + chunk.length);
        }
        System.arraycopy(chunk, 0, samples, length, chunk.length);
        length += chunk.length;
      }
      return Pcm.of(samples.length == length ? samples : Arrays.copyOf(samples, length));
    }
  }

  /**
   * Opens a file to be read chunk by chunk, as fast as it is asked for.
   *
   * @throws AudioProblem if it is missing, empty, not audio, of a kind that is not known, or holds
   *     less than its header promises
   */
  public static SampleSource open(Path file) throws AudioProblem {
    String name = String.valueOf(file.getFileName());
    if (!Files.exists(file)) {
      throw new AudioProblem("expected an audio file, found nothing at " + file);
    }
    if (!Files.isRegularFile(file)) {
      String found = Files.isDirectory(file) ? "a folder" : "something that is no file";
      throw new AudioProblem("expected an audio file, found " + found + " at " + file);
    }
    if (!Files.isReadable(file)) {
      throw new AudioProblem("expected an audio file, found one that may not be read at " + file);
    }
    AudioInputStream stream = null;
    try {
      if (Files.size(file) == 0) {
        throw new AudioProblem("expected audio, found 0 bytes in " + name);
      }
      if (FileKind.isBlank(file)) {
        throw new UnsupportedAudioFileException();
      }
      stream = AudioSystem.getAudioInputStream(file.toFile());
      requireWhole(stream, name);
      return source(stream, name);
    } catch (UnsupportedAudioFileException e) {
      throw new AudioProblem(
          "expected WAV, AIFF or AU, found " + FileKind.describe(file) + " in " + name, e);
    } catch (AudioProblem e) {
      closeQuietly(stream);
      throw e;
    } catch (IOException | RuntimeException e) {
      // Java Sound's readers meet damaged headers with all sorts of runtime exceptions.
      closeQuietly(stream);
      throw new AudioProblem(
          "expected audio, found a header that cannot be read ("
              + AudioProblem.reason(e)
              + ") in "
              + name,
          e);
    }
  }

  /** Writes a WAV file of 16-bit samples, replacing what was there. */
  public static void write(Path file, Pcm pcm) throws IOException {
    try (WavWriter writer = WavWriter.create(file, pcm.sampleRate())) {
      writer.append(pcm.samples());
    }
  }

  private static SampleSource source(AudioInputStream stream, String name) throws AudioProblem {
    AudioFormat format = stream.getFormat();
    int rate = Math.round(format.getSampleRate());
    if (rate < LOWEST_RATE || rate > HIGHEST_RATE) {
      throw new AudioProblem("expected 8000 to 96000 Hz, found " + rate + " Hz in " + name);
    }
    if (SampleDecoder.knows(format)) {
      return new StreamSource(stream, name);
    }
    AudioFormat plain =
        new AudioFormat(
            Encoding.PCM_SIGNED,
            format.getSampleRate(),
            Short.SIZE,
            format.getChannels(),
            Short.BYTES * format.getChannels(),
            format.getSampleRate(),
            false);
    if (!AudioSystem.isConversionSupported(plain, format)) {
      throw new AudioProblem(
          "expected PCM, float, A-law or µ-law, found " + format + " in " + name);
    }
    return new StreamSource(AudioSystem.getAudioInputStream(plain, stream), name);
  }

  /** Checks before anything is decoded that the file is as long as its header says. */
  private static void requireWhole(AudioInputStream stream, String name) throws IOException {
    long frames = stream.getFrameLength();
    long frameSize = Math.max(1, stream.getFormat().getFrameSize());
    if (frames == 0) {
      throw new AudioProblem("expected sound, found a header that promises none in " + name);
    }
    int present = stream.available();
    if (present < frameSize) {
      throw new AudioProblem("expected sound, found only a header in " + name);
    }
    double seconds = present / frameSize / stream.getFormat().getFrameRate();
    if (seconds > LONGEST_HOURS * 3600.0) {
      throw new AudioProblem("expected at most " + LONGEST_HOURS + " hours, found more in " + name);
    }
    boolean known = frames > 0 && frames * frameSize < UNKNOWN_LENGTH;
    if (known && present < frames * frameSize) {
      throw new AudioProblem(
          String.format(
              Locale.ROOT,
              "expected %d samples as its header says, found %d in %s",
              frames,
              present / frameSize,
              name));
    }
  }

  private static void closeQuietly(AudioInputStream stream) {
    if (stream != null) {
      try {
        stream.close();
      } catch (IOException ignored) {
        // The problem that led here is the one to tell.
      }
    }
  }
}
