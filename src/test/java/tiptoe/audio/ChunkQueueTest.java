package tiptoe.audio;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.InterruptedIOException;
import org.junit.jupiter.api.Test;

class ChunkQueueTest {
  private final ChunkQueue queue = new ChunkQueue(4000, 0);

  @Test
  void dropsTheOldestAndSaysHowMuchIsMissing() throws IOException {
    for (int i = 0; i < 5; i++) {
      queue.put(chunk(1600L * i));
    }
    Chunk first = queue.next().orElseThrow();
    assertEquals(4800, first.position());
    assertEquals(4800, first.lost());
    assertEquals(0, queue.next().orElseThrow().lost());
  }

  @Test
  void addsUpWhatTheMicrophoneAndTheReaderLost() throws IOException {
    queue.put(chunk(0));
    queue.put(new Chunk(8000, 6400, new short[1600]));
    queue.put(chunk(9600));
    queue.put(chunk(11_200));
    assertEquals(9600, queue.next().orElseThrow().lost());
  }

  @Test
  void countsNothingFromBeforeItWasMade() throws IOException {
    ChunkQueue late = new ChunkQueue(4000, 32_000);
    late.put(chunk(32_000));
    assertEquals(0, late.next().orElseThrow().lost());
  }

  @Test
  void givesOutWhatItHoldsAndThenEnds() throws IOException {
    queue.put(chunk(0));
    queue.end();
    queue.put(chunk(1600));
    assertTrue(queue.next().isPresent());
    assertTrue(queue.next().isEmpty());
  }

  @Test
  void endsAtOnceWhenClosed() throws IOException {
    queue.put(chunk(0));
    queue.close();
    assertTrue(queue.next().isEmpty());
  }

  @Test
  void wakesUpWhenInterrupted() {
    Thread.currentThread().interrupt();
    assertThrows(InterruptedIOException.class, queue::next);
    assertTrue(Thread.interrupted());
  }

  private static Chunk chunk(long position) {
    return new Chunk(position, 0, new short[1600]);
  }
}
