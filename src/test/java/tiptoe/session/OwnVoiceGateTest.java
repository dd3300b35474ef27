package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;
import tiptoe.audio.Chunk;
import tiptoe.audio.SampleSource;

/** What the tool says itself is not heard, and that nothing is heard is told. */
class OwnVoiceGateTest {
  private static final short LOUD = 9000;

  private static final class Loud implements SampleSource {
    private final Queue<Chunk> chunks = new ArrayDeque<>();

    Loud(int count) {
      short[] samples = new short[160];
      Arrays.fill(samples, LOUD);
      for (int i = 0; i < count; i++) {
        chunks.add(new Chunk(160L * i, 0, samples));
      }
    }

    @Override
    public Optional<Chunk> next() {
      return Optional.ofNullable(chunks.poll());
    }

    @Override
    public void end() {}

    @Override
    public void close() {}
  }

  @Test
  void isQuietWhileItSpeaksAndTellsWhenItBeginsAndEnds() throws IOException {
    AtomicBoolean speaks = new AtomicBoolean();
    List<Boolean> told = new ArrayList<>();
    List<Boolean> loud = new ArrayList<>();
    try (OwnVoiceGate gate = new OwnVoiceGate(new Loud(6), speaks::get, told::add)) {
      for (int i = 0; i < 6; i++) {
        speaks.set(i == 2 || i == 3);
        Chunk chunk = gate.next().orElseThrow();
        assertEquals(160L * i, chunk.position(), "time goes on");
        loud.add(chunk.samples()[0] == LOUD);
      }
    }
    assertEquals(List.of(true, true, false, false, true, true), loud);
    assertEquals(List.of(true, false), told);
  }
}
