package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.RandomAccessFile;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class SegmentStoreTest {
  @TempDir Path parent;

  @Test
  void cutsTheRecordingIntoSegmentsOfTenSeconds() throws IOException {
    record(25);
    List<Segment> segments = SegmentStore.segments(folder());
    assertEquals(
        List.of(
            "segment-000001-0000000000.wav",
            "segment-000002-0000160000.wav",
            "segment-000003-0000320000.wav"),
        segments.stream().map(segment -> segment.file().getFileName().toString()).toList());
    assertEquals(
        List.of(160_000L, 160_000L, 80_000L), segments.stream().map(Segment::length).toList());
  }

  @Test
  void writesSegmentsThatAnyPlayerReads() throws IOException {
    record(12);
    Pcm second = AudioFile.read(SegmentStore.segments(folder()).get(1).file());
    assertArrayEquals(samples(160_000, 32_000), second.samples());
  }

  @Test
  void letsNoOneElseRead() throws IOException {
    assumeTrue(
        parent.getFileSystem().supportedFileAttributeViews().contains("posix"),
        "this file system knows no owner");
    Path deep = parent.resolve("a/b");
    try (SegmentStore store = SegmentStore.open(deep)) {
      store.append(new Chunk(0, 0, new short[1600]));
    }
    assertEquals("rwx------", permissions(deep));
    assertEquals("rwx------", permissions(deep.getParent()));
    assertEquals("rw-------", permissions(SegmentStore.segments(deep).get(0).file()));
  }

  @Test
  void givesBackAnyStretch() throws IOException {
    record(25);
    Pcm stretch = SegmentStore.read(folder(), 9.5, 20.5).orElseThrow();
    assertArrayEquals(samples(152_000, 176_000), stretch.samples());
    assertEquals(5, SegmentStore.read(folder(), 20, 99).orElseThrow().seconds());
    assertEquals(Optional.empty(), SegmentStore.read(folder(), 25, 26));
    assertEquals(Optional.empty(), SegmentStore.read(parent.resolve("nowhere"), 0, 1));
  }

  @Test
  void givesBackWhatIsBeingRecorded() throws IOException {
    try (SegmentStore store = SegmentStore.open(folder())) {
      store.append(new Chunk(0, 0, samples(0, 1600)));
      assertArrayEquals(
          samples(0, 1600), SegmentStore.read(folder(), 0, 1).orElseThrow().samples());
    }
  }

  @Test
  void keepsALossInItsPlace() throws IOException {
    try (SegmentStore store = SegmentStore.open(folder())) {
      store.append(new Chunk(0, 0, samples(0, 1600)));
      store.append(new Chunk(4800, 3200, samples(4800, 1600)));
    }
    assertEquals(2, SegmentStore.segments(folder()).size());
    short[] expected = samples(0, 6400);
    Arrays.fill(expected, 1600, 4800, (short) 0);
    assertArrayEquals(expected, SegmentStore.read(folder(), 0, 1).orElseThrow().samples());
  }

  @Test
  void goesOnBehindTheEndOfAnEarlierRecording() throws IOException {
    record(12);
    try (SegmentStore store = SegmentStore.open(folder())) {
      assertEquals(192_000, store.offset());
      store.append(new Chunk(0, 0, samples(192_000, 1600)));
    }
    List<Segment> segments = SegmentStore.segments(folder());
    assertEquals(3, segments.get(2).number());
    assertArrayEquals(
        samples(190_400, 3200), SegmentStore.read(folder(), 11.9, 13).orElseThrow().samples());
  }

  /** As after a power cut: samples without a header that counts them, and half a sample. */
  @Test
  void readsASegmentThatWasCutOff() throws IOException {
    record(2);
    Path file = SegmentStore.segments(folder()).get(0).file();
    try (RandomAccessFile torn = new RandomAccessFile(file.toFile(), "rw")) {
      torn.seek(40);
      torn.writeInt(0);
      torn.setLength(44 + 2 * 20_000 + 1);
    }
    assertArrayEquals(
        samples(0, 20_000), SegmentStore.read(folder(), 0, 9).orElseThrow().samples());
    Files.write(file, new byte[10]);
    assertEquals(Optional.empty(), SegmentStore.read(folder(), 0, 9));
  }

  @Test
  void refusesAFileInPlaceOfTheFolder() throws IOException {
    Files.createFile(folder());
    AudioProblem problem = assertThrows(AudioProblem.class, () -> SegmentStore.open(folder()));
    assertEquals(
        "expected a folder for the recording, found a file at " + folder(), problem.getMessage());
  }

  @Test
  void erasesTheRecordingAndNothingElse() throws IOException {
    record(12);
    Path note = Files.writeString(folder().resolve("note.txt"), "kept");
    SegmentStore.erase(folder());
    assertEquals(List.of(), SegmentStore.segments(folder()));
    assertTrue(Files.exists(note));
  }

  @Test
  void recordsASourceToItsEnd() throws Exception {
    List<AudioProblem> problems = new ArrayList<>();
    ChunkQueue queue = new ChunkQueue(1_000_000, 0);
    Recorder recorder = Recorder.start(queue, SegmentStore.open(folder()), problems::add);
    for (int at = 0; at < 176_000; at += 1600) {
      queue.put(new Chunk(at, 0, samples(at, 1600)));
    }
    recorder.close();
    assertEquals(0, recorder.unsaved());
    assertEquals(List.of(), problems);
    assertArrayEquals(
        samples(0, 176_000), SegmentStore.read(folder(), 0, 99).orElseThrow().samples());
  }

  /** The folder vanishes, as when a memory stick is pulled out, and comes back. */
  @Test
  void saysOnceThatTheRecordingCannotBeSavedAndTriesAgainAfterTwoSeconds() throws Exception {
    List<String> problems = new ArrayList<>();
    SegmentStore store = SegmentStore.open(folder());
    Files.delete(folder());
    ChunkQueue queue = new ChunkQueue(1_000_000, 0);
    for (int at = 0; at < 64_000; at += 1600) {
      queue.put(new Chunk(at, 0, samples(at, 1600)));
    }
    queue.end();
    Recorder recorder =
        Recorder.start(
            queue,
            store,
            problem -> {
              problems.add(problem.getMessage());
              folder().toFile().mkdir();
            });
    recorder.finish();
    assertEquals(1, problems.size());
    assertTrue(problems.get(0).startsWith("expected to save the recording, found "));
    assertEquals(33_600, recorder.unsaved());
    Pcm stored = SegmentStore.read(folder(), 0, 99).orElseThrow();
    assertArrayEquals(samples(33_600, 64_000 - 33_600), stored.samples());
  }

  private Path folder() {
    return parent.resolve("recording");
  }

  private void record(int seconds) throws IOException {
    try (SegmentStore store = SegmentStore.open(folder())) {
      // 0.15 s does not divide 10 s: chunks are cut at the border of segments.
      for (int at = 0; at < seconds * Pcm.RATE; at += 2400) {
        int length = Math.min(2400, seconds * Pcm.RATE - at);
        store.append(new Chunk(at, 0, samples(at, length)));
      }
    }
  }

  /** Samples that tell their own place. */
  private static short[] samples(int from, int length) {
    short[] samples = new short[length];
    for (int i = 0; i < length; i++) {
      samples[i] = (short) ((from + i) % 32_000 + 1);
    }
    return samples;
  }

  private static String permissions(Path path) throws IOException {
    return PosixFilePermissions.toString(Files.getPosixFilePermissions(path));
  }
}
