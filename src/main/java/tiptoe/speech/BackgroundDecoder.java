package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.Supplier;

/**
 * Hears one stretch of sound piece by piece, on another thread than the one that brings it: what
 * takes long is done by the time the stretch ends.
 */
final class BackgroundDecoder {
  private final VoskLibrary library;

  /** Does one thing after the other, and all that is done with the recogniser. */
  private final Executor thread;

  private final CompletableFuture<Optional<Pointer>> recogniser;
  private volatile boolean dropped;

  /**
   * @param thread does one thing after the other
   * @param recognisers makes a recogniser, or none; may take its time
   * @param alternatives most of them that are given
   */
  BackgroundDecoder(
      VoskLibrary library,
      Executor thread,
      Supplier<Optional<Pointer>> recognisers,
      int alternatives) {
    this.library = library;
    this.thread = thread;
    recogniser =
        CompletableFuture.supplyAsync(recognisers, thread)
            .thenApply(made -> prepared(made, alternatives));
  }

  private Optional<Pointer> prepared(Optional<Pointer> made, int alternatives) {
    made.ifPresent(
        one -> {
          library.vosk_recognizer_set_words(one, 1);
          library.vosk_recognizer_set_max_alternatives(one, alternatives);
        });
    return made;
  }

  /** Takes the next sound of the stretch; not copied. */
  void hear(short[] sound) {
    thread.execute(
        () -> {
          if (!dropped) {
            recogniser.thenAccept(
                made ->
                    made.ifPresent(
                        one ->
                            library.vosk_recognizer_accept_waveform_s(one, sound, sound.length)));
          }
        });
  }

  /** What the library gives for the stretch, as JSON; empty where there was no recogniser. */
  CompletableFuture<Optional<String>> end() {
    return CompletableFuture.supplyAsync(() -> recogniser.join().map(this::result), thread);
  }

  private String result(Pointer one) {
    try {
      return library.vosk_recognizer_final_result(one);
    } finally {
      library.vosk_recognizer_free(one);
    }
  }

  /** Nobody asks what was heard. */
  void drop() {
    dropped = true;
    thread.execute(
        () -> recogniser.thenAccept(made -> made.ifPresent(library::vosk_recognizer_free)));
  }
}
