package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class PacedSourceTest {
  /** A clock that moves only when someone sleeps. */
  private static final class FakePace implements PacedSource.Pace {
    private final List<Long> sleeps = new ArrayList<>();
    private long now = Long.MAX_VALUE - 5; // as nanoTime, it may overflow

    @Override
    public long nanoTime() {
      return now;
    }

    @Override
    public void sleepNanos(long nanos) {
      sleeps.add(nanos);
      now += nanos;
    }
  }

  @Test
  void handsChunksOutWhenTheyCouldHaveBeenHeard() throws IOException {
    FakePace pace = new FakePace();
    try (SampleSource source = new PacedSource(Signals.chunks(1600, 800), pace)) {
      assertEquals(1600, source.next().orElseThrow().samples().length);
      assertEquals(List.of(100_000_000L), pace.sleeps);
      pace.now += 20_000_000; // time that decoding took
      source.next();
      assertEquals(List.of(100_000_000L, 30_000_000L), pace.sleeps);
      assertTrue(source.next().isEmpty());
    }
  }

  @Test
  void catchesUpWithoutWaitingWhenItIsLate() throws IOException {
    FakePace pace = new FakePace();
    try (SampleSource source = new PacedSource(Signals.chunks(1600, 1600), pace)) {
      source.next();
      pace.now += 500_000_000;
      source.next();
      assertEquals(1, pace.sleeps.size());
    }
  }
}
