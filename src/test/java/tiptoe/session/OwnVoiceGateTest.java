package tiptoe.session;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Queue;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
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
    AtomicInteger read = new AtomicInteger();
    AtomicReference<Double> until = new AtomicReference<>();
    try (OwnVoiceGate gate =
        new OwnVoiceGate(
            new Loud(6),
            ago -> speaks.get(),
            () -> 0.01 * read.incrementAndGet(),
            told::add,
            until::set)) {
      for (int i = 0; i < 6; i++) {
        speaks.set(i == 2 || i == 3);
        Chunk chunk = gate.next().orElseThrow();
        assertEquals(160L * i, chunk.position(), "time goes on");
        loud.add(chunk.samples()[0] == LOUD);
      }
    }
    assertEquals(List.of(true, true, false, false, true, true), loud);
    assertEquals(List.of(true, false), told);
    assertEquals(0.04, until.get(), 1e-9, "an answer counts from here on");
  }

  /** Pieces of 10 ms that are decoded 30 ms late, with a voice that spoke from 20 to 30 ms. */
  @Test
  void soundThatIsDecodedLateIsQuietWhereItSpokeThenAndNotNow() throws IOException {
    AtomicLong clock = new AtomicLong();
    OwnVoice voice = new OwnVoice(clock::get);
    List<Boolean> loud = new ArrayList<>();
    try (OwnVoiceGate gate =
        new OwnVoiceGate(
            new Loud(6), voice::spoke, () -> clock.get() / 1e9, now -> {}, second -> {})) {
      for (int at = 0; at < 9; at++) {
        clock.set(at * 10_000_000L);
        if (at == 2) {
          voice.begin(Duration.ofSeconds(1));
        } else if (at == 3) {
          voice.end();
        }
        if (at >= 3) {
          loud.add(gate.next().orElseThrow().samples()[0] == LOUD);
        }
      }
    }
    // What only touches the voice is quiet too.
    assertEquals(List.of(true, false, false, true, true, true), loud);
  }

  @Test
  void aVoiceThatNeverEndsDoesNotKeepTheMicrophoneShut() {
    AtomicLong clock = new AtomicLong();
    OwnVoice voice = new OwnVoice(clock::get);
    voice.begin(Duration.ofSeconds(5));
    voice.begin(Duration.ofSeconds(5));
    clock.set(9_000_000_000L);
    assertTrue(voice.spoke(0));
    clock.set(11_000_000_000L);
    assertFalse(voice.spoke(0));
    assertTrue(voice.spoke(2));
  }
}
