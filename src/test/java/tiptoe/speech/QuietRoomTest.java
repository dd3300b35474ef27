package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.jna.Pointer;
import java.io.IOException;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;

/** What a recogniser does while nobody speaks. */
@Tag("hearing")
class QuietRoomTest {
  private static final double QUIET_SECONDS = 30;

  private final AtomicLong decoded = new AtomicLong();

  /** The library, counting the samples that it is given. */
  private VoskLibrary counting(VoskLibrary library) {
    return (VoskLibrary)
        Proxy.newProxyInstance(
            VoskLibrary.class.getClassLoader(),
            new Class<?>[] {VoskLibrary.class},
            (proxy, method, args) -> {
              if (method.getName().equals("vosk_recognizer_accept_waveform_s")) {
                decoded.addAndGet((int) args[2]);
              }
              return method.invoke(library, args);
            });
  }

  @Test
  void aQuietRoomIsNotDecodedAndWhatIsSaidAfterItIsHeardAtItsTime() throws IOException {
    Pcm clip = AudioFile.read(Clips.all().get(0).file());
    VoskLibrary library = counting(Vosk.library());
    Pointer model = library.vosk_model_new(Clips.built(Clips.network()).folder().toString());
    List<Hypothesis> heard = new ArrayList<>();
    try (Recogniser recogniser =
        new Recogniser(library, library.vosk_recognizer_new(model, Recogniser.RATE), null)) {
      heard.addAll(recogniser.accept(clip.samples()));
      short[] room = room();
      for (int at = 0; at < room.length; at += 320) {
        heard.addAll(recogniser.accept(room, at, 320));
      }
      assertEquals(1, heard.size());
      heard.addAll(recogniser.accept(clip.samples()));
      recogniser.finish().ifPresent(heard::add);
    } finally {
      library.vosk_model_free(model);
    }
    assertEquals(2, heard.size());
    assertEquals(heard.get(0).text(), heard.get(1).text());
    double later = clip.seconds() + QUIET_SECONDS;
    assertEquals(heard.get(0).start() + later, heard.get(1).start(), 0.1);
    assertEquals(heard.get(0).end() + later, heard.get(1).end(), 0.1);
    double expected = 2 * clip.seconds() + 4;
    double seconds = (double) decoded.get() / Recogniser.RATE;
    assertTrue(seconds <= expected + 1, seconds + " s decoded");
  }

  private static short[] room() {
    Random random = new Random(3);
    short[] room = new short[(int) (QUIET_SECONDS * Recogniser.RATE)];
    for (int i = 0; i < room.length; i++) {
      room[i] = (short) Math.round(random.nextGaussian() * 8);
    }
    return room;
  }
}
