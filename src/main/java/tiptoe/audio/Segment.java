package tiptoe.audio;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One stored file of at most 10 s. Its name holds its number and its place, so that a folder of
 * segments needs no index that could disagree with it: {@code segment-000012-0001920000.wav}, or
 * {@code .sealed} where it is encrypted.
 *
 * @param number counts from 1
 * @param position place of its first sample, in 16 kHz samples since the start
 * @param length number of whole samples in it
 * @param file where it is
 */
public record Segment(int number, long position, long length, Path file) {
  private static final Pattern NAME =
      Pattern.compile("segment-(\\d{6,9})-(\\d{10,18})\\.(wav|sealed)");

  /** More than 10 s take, also encrypted. */
  private static final long MOST_BYTES = 1 << 20;

  /** The place right behind its last sample. */
  public long end() {
    return position + length;
  }

  static String name(int number, long position, boolean sealed) {
    String kind = sealed ? "sealed" : "wav";
    return String.format(Locale.ROOT, "segment-%06d-%010d.%s", number, position, kind);
  }

  /** The segment in a file, or empty if its name is not that of one, or it is a link or no file. */
  static Optional<Segment> of(Path file) throws IOException {
    Matcher name = NAME.matcher(file.getFileName().toString());
    if (!name.matches() || !Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
      return Optional.empty();
    }
    if (Files.size(file) > MOST_BYTES) {
      throw new AudioProblem(
          "expected at most 10 s of sound, found " + Files.size(file) + " bytes in " + file);
    }
    long length = isSealed(file) ? SealedReader.of(file).length() : wavLength(file);
    int number = Integer.parseInt(name.group(1));
    return Optional.of(new Segment(number, Long.parseLong(name.group(2)), length, file));
  }

  // By the file's size, not its header, which a power cut may have left behind the samples.
  private static long wavLength(Path file) throws IOException {
    return Math.max(0, Files.size(file) - WavWriter.HEADER_BYTES) / Short.BYTES;
  }

  private static boolean isSealed(Path file) {
    return file.getFileName().toString().endsWith(".sealed");
  }

  /**
   * Copies the samples that belong into the stretch which begins at a place.
   *
   * @param seal opens the segment if it is encrypted; null when there is none
   */
  void copyInto(short[] stretch, long from, SoundSeal seal) throws IOException {
    long start = Math.max(position, from);
    int count = (int) (Math.min(end(), from + stretch.length) - start);
    if (count <= 0) {
      return;
    }
    if (isSealed(file)) {
      short[] samples = opened(start - position, start - position + count, seal);
      System.arraycopy(samples, 0, stretch, (int) (start - from), count);
    } else {
      copyWav(stretch, from, start, count);
    }
  }

  private short[] opened(long from, long to, SoundSeal seal) throws IOException {
    if (seal == null) {
      throw new AudioProblem("the sound is encrypted: the passphrase of the record is needed");
    }
    return SealedReader.of(file).samples(from, to, seal);
  }

  private void copyWav(short[] stretch, long from, long start, int count) throws IOException {
    ByteBuffer bytes = ByteBuffer.allocate(count * Short.BYTES).order(ByteOrder.LITTLE_ENDIAN);
    try (FileChannel channel = FileChannel.open(file, StandardOpenOption.READ)) {
      long at = WavWriter.HEADER_BYTES + (start - position) * Short.BYTES;
      while (bytes.hasRemaining() && channel.read(bytes, at + bytes.position()) >= 0) {
        // until all is read, or the file turns out shorter
      }
    }
    bytes.flip().asShortBuffer().get(stretch, (int) (start - from), bytes.limit() / Short.BYTES);
  }
}
