package tiptoe.audio;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import tiptoe.files.OwnerOnly;

/**
 * Keeps a recording in a folder as WAV files of at most 10 s, which only their owner may read, or
 * as encrypted ones. Samples are written as they come, and forced to the disk at least once for
 * every second of sound, so that a power cut costs no more than about that. Nothing stored is ever
 * overwritten: a folder that holds a recording is gone on with behind its end. For use by one
 * thread at a time.
 */
public final class SegmentStore implements AutoCloseable {
  private static final int SEGMENT_SAMPLES = 10 * Pcm.RATE;
  private static final int FORCED_SAMPLES = Pcm.RATE;

  /** So much of a disk is not filled by sound: what is recorded beside it needs little room. */
  private static final long ROOM_BYTES = 1 << 20;

  /** Told of each segment once it is complete and on the disk, on the thread that stores. */
  @FunctionalInterface
  public interface Listener {
    /**
     * @throws IOException when it could not take that in: it is told again before more is stored
     */
    void complete(Segment segment) throws IOException;
  }

  private final Path folder;
  private final long offset;
  private int number;
  private final SoundSeal seal;
  private final Listener listener;
  private final FileStore disk;
  private final Deque<Path> untold = new ArrayDeque<>();
  private SegmentWriter writer;
  private Path writerFile;
  private long writerStart;
  private int unforced;

  private SegmentStore(
      Path folder, SoundSeal seal, Listener listener, FileStore disk, long offset, int number) {
    this.folder = folder;
    this.seal = seal;
    this.listener = listener;
    this.disk = disk;
    this.offset = offset;
    this.number = number;
  }

  /** Opens the folder, and makes it where it is missing. */
  public static SegmentStore open(Path folder) throws IOException {
    return open(folder, null, segment -> {});
  }

  /**
   * Opens the folder, and makes it where it is missing.
   *
   * @param seal encrypts what is stored; null to leave it readable
   */
  public static SegmentStore open(Path folder, SoundSeal seal, Listener listener)
      throws IOException {
    requireNoLink(folder);
    try {
      OwnerOnly.createFolder(folder);
    } catch (FileAlreadyExistsException e) {
      throw new AudioProblem("expected a folder for the recording, found a file at " + folder, e);
    }
    List<Segment> before = segments(folder);
    long end = before.stream().mapToLong(Segment::end).max().orElse(0);
    int last = before.stream().mapToInt(Segment::number).max().orElse(0);
    return new SegmentStore(folder, seal, listener, Files.getFileStore(folder), end, last);
  }

  /**
   * Where in the folder's time line this recording begins, in samples: 0 in a new folder. A chunk
   * is kept at this offset plus its own position.
   */
  public long offset() {
    return offset;
  }

  /** Writes a chunk behind those before. A chunk behind a loss begins a new segment. */
  public void append(Chunk chunk) throws IOException {
    short[] samples = chunk.samples();
    int done = 0;
    while (done < samples.length) {
      long place = offset + chunk.position() + done;
      prepare(place);
      int count = Math.min(samples.length - done, SEGMENT_SAMPLES - writer.length());
      write(count == samples.length ? samples : part(samples, done, count));
      done += count;
    }
  }

  /** Forces to the disk what is not there yet. */
  public void force() throws IOException {
    if (writer != null) {
      writer.force();
      unforced = 0;
    }
  }

  @Override
  public void close() throws IOException {
    SegmentWriter closing = writer;
    writer = null;
    if (closing != null) {
      untold.add(writerFile);
      try (closing) {
        closing.force();
      }
    }
    while (!untold.isEmpty()) {
      // What was removed meanwhile is missed elsewhere.
      Optional<Segment> complete = Segment.of(untold.peek());
      if (complete.isPresent()) {
        listener.complete(complete.get());
      }
      untold.remove();
    }
  }

  /** The segments in a folder, in their order; none if there is no such folder. */
  public static List<Segment> segments(Path folder) throws IOException {
    requireNoLink(folder);
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    List<Segment> segments = new ArrayList<>();
    try (Stream<Path> files = Files.list(folder)) {
      for (Path file : (Iterable<Path>) files::iterator) {
        Segment.of(file).ifPresent(segments::add);
      }
    }
    segments.sort(Comparator.comparingInt(Segment::number));
    return segments;
  }

  /**
   * The sound between two times, in seconds on the folder's time line, cut to what there is; what
   * was lost in between is silent. Works while a recording goes on.
   *
   * @return empty if nothing is stored of that time
   */
  public static Optional<Pcm> read(Path folder, double from, double to) throws IOException {
    return read(folder, from, to, null);
  }

  /**
   * The same where sound may be encrypted.
   *
   * @param seal opens it; null when there is none
   */
  public static Optional<Pcm> read(Path folder, double from, double to, SoundSeal seal)
      throws IOException {
    long start = Math.max(0, Math.round(from * Pcm.RATE));
    long end = Math.round(to * Pcm.RATE);
    List<Segment> touched =
        segments(folder).stream().filter(s -> s.position() < end && s.end() > start).toList();
    if (touched.isEmpty()) {
      return Optional.empty();
    }
    long first = Math.max(start, touched.get(0).position());
    long last = Math.min(end, touched.get(touched.size() - 1).end());
    short[] stretch = new short[Math.toIntExact(last - first)];
    for (Segment segment : touched) {
      segment.copyInto(stretch, first, seal);
    }
    return Optional.of(Pcm.of(stretch));
  }

  /** A link leads to files that are not the recording's: none of them is read, closed or erased. */
  private static void requireNoLink(Path folder) throws AudioProblem {
    if (Files.isSymbolicLink(folder)) {
      throw new AudioProblem("expected a folder for the recording, found a link at " + folder);
    }
  }

  /** Deletes every segment in a folder, and leaves whatever else is in it. */
  public static void erase(Path folder) throws IOException {
    for (Segment segment : segments(folder)) {
      Files.deleteIfExists(segment.file());
    }
  }

  /** Sees to it that a segment is open whose next sample has this place. */
  private void prepare(long place) throws IOException {
    boolean fits =
        writer != null
            && writer.length() < SEGMENT_SAMPLES
            && writerStart + writer.length() == place;
    if (fits) {
      return;
    }
    close();
    requireRoom();
    number++;
    String name = Segment.name(number, place, seal != null);
    writerFile = folder.resolve(name);
    FileChannel file = OwnerOnly.createFile(writerFile);
    try {
      writer = seal == null ? WavWriter.to(file, Pcm.RATE) : new SealedWriter(file, name, seal);
    } catch (IOException e) {
      file.close();
      Files.deleteIfExists(writerFile);
      throw e;
    }
    writerStart = place;
    unforced = 0;
    forceFolder();
  }

  private void requireRoom() throws IOException {
    if (disk.getUsableSpace() < ROOM_BYTES) {
      throw new IOException("less than 1 MiB of room on the disk, which is left to the record");
    }
  }

  private void write(short[] samples) throws IOException {
    if (unforced == 0) {
      requireRoom();
    }
    writer.append(samples);
    unforced += samples.length;
    if (unforced >= FORCED_SAMPLES || writer.length() == SEGMENT_SAMPLES) {
      force();
    }
  }

  /** Without this, a power cut could lose the new file's name. */
  private void forceFolder() {
    try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Windows opens no folders; its file systems log names themselves.
    }
  }

  private static short[] part(short[] samples, int from, int count) {
    return Arrays.copyOfRange(samples, from, from + count);
  }
}
