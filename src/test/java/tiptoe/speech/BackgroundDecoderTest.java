package tiptoe.speech;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.sun.jna.Pointer;
import java.lang.reflect.Proxy;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** What a library that only notes what is asked of it was asked for. */
class BackgroundDecoderTest {
  private final List<String> asked = new ArrayList<>();

  private final VoskLibrary library =
      (VoskLibrary)
          Proxy.newProxyInstance(
              VoskLibrary.class.getClassLoader(),
              new Class<?>[] {VoskLibrary.class},
              (proxy, method, arguments) -> {
                String name = method.getName().replace("vosk_recognizer_", "");
                if (name.equals("accept_waveform_s")) {
                  asked.add("hear " + ((short[]) arguments[1])[0]);
                  return 0;
                }
                asked.add(name);
                return name.equals("final_result") ? "heard" : null;
              });

  private final BackgroundDecoder decoder =
      new BackgroundDecoder(library, Runnable::run, this::made, 1);

  private Optional<Pointer> made() {
    asked.add("made");
    return Optional.of(Pointer.createConstant(1));
  }

  @Test
  void whatWaitedIsHeardInTheSamePieces() {
    decoder.take(new short[] {1});
    decoder.take(new short[] {2});
    assertEquals(List.of(), asked);
    decoder.hear();
    decoder.take(new short[] {3});
    assertEquals(Optional.of("heard"), decoder.end().join());
    assertEquals(
        List.of("made", "set_words", "set_max_alternatives", "hear 1", "hear 2", "hear 3"),
        asked.subList(0, 6));
    assertEquals(List.of("final_result", "free"), asked.subList(6, asked.size()));
  }

  @Test
  void whatNobodyAsksForIsNotHeard() {
    decoder.take(new short[] {1});
    decoder.drop();
    decoder.hear();
    assertEquals(List.of(), asked);
  }

  @Test
  void whatIsDroppedOnTheWayIsFreed() {
    decoder.take(new short[] {1});
    decoder.hear();
    decoder.drop();
    assertEquals("free", asked.get(asked.size() - 1));
  }
}
