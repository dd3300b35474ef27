package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.audio.Chunk;
import tiptoe.audio.SampleSource;
import tiptoe.audio.SegmentStore;
import tiptoe.audio.SoundKeeper;
import tiptoe.session.KeptSound;
import tiptoe.session.UnpausedSound;

/** What is said while an examination is paused is not kept. */
class UnpausedSoundTest {
  private static final int SAMPLES = 1600;
  private static final Queue<Boolean> PAUSED =
      new ArrayDeque<>(List.of(false, true, true, false, false));

  @TempDir private Path folder;

  private static SampleSource chunks(int count) {
    return new SampleSource() {
      private int next;

      @Override
      public Optional<Chunk> next() {
        return next < count
            ? Optional.of(new Chunk((long) next++ * SAMPLES, 0, new short[SAMPLES]))
            : Optional.empty();
      }

      @Override
      public void end() {
        next = count;
      }

      @Override
      public void close() {
        end();
      }
    };
  }

  @Test
  void leavesOutWhatIsPausedAndSaysHowMuchThatWas() throws IOException {
    Queue<Boolean> paused = new ArrayDeque<>(PAUSED);
    try (SampleSource sound = new UnpausedSound(chunks(5), paused::remove)) {
      assertEquals(0, sound.next().orElseThrow().position());
      Chunk after = sound.next().orElseThrow();
      assertEquals(3 * SAMPLES, after.position());
      assertEquals(2 * SAMPLES, after.lost());
      assertEquals(0, sound.next().orElseThrow().lost());
      assertTrue(sound.next().isEmpty());
    }
  }

  @Test
  void aRecordingIsHeardWholeAndKeptWithoutThePause() throws IOException {
    Queue<Boolean> paused = new ArrayDeque<>(PAUSED);
    int heard = 0;
    try (SoundKeeper keeper = new SoundKeeper(SegmentStore.open(folder), problem -> {});
        SampleSource sound = new KeptSound(chunks(5), keeper::keep, 0, paused::remove)) {
      while (sound.next().isPresent()) {
        heard++;
      }
    }
    assertEquals(5, heard);
    long kept =
        SegmentStore.segments(folder).stream()
            .mapToLong(segment -> segment.end() - segment.position())
            .sum();
    assertEquals(3 * SAMPLES, kept);
  }
}
