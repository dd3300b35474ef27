package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.function.Supplier;

/**
 * Hears one stretch of sound piece by piece, on another thread than the one that brings it: what
 * takes long is done by the time the stretch ends. Where it may turn out that nobody asks, the
 * pieces wait: heard later, they are heard the same.
 */
final class BackgroundDecoder {
  private final VoskLibrary library;

  /** Does one thing after the other, and all that is done with the recogniser. */
  private final Executor thread;

  private final Supplier<Optional<Pointer>> recognisers;
  private final int alternatives;
  private final List<short[]> waiting = new ArrayList<>();

  /** Null until something is heard. */
  private CompletableFuture<Optional<Pointer>> recogniser;

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
    this.recognisers = recognisers;
    this.alternatives = alternatives;
  }

  private CompletableFuture<Optional<Pointer>> recogniser() {
    if (recogniser == null) {
      recogniser = CompletableFuture.supplyAsync(recognisers, thread).thenApply(this::prepared);
    }
    return recogniser;
  }

  private Optional<Pointer> prepared(Optional<Pointer> made) {
    made.ifPresent(
        one -> {
          library.vosk_recognizer_set_words(one, 1);
          library.vosk_recognizer_set_max_alternatives(one, alternatives);
        });
    return made;
  }

  /** Takes the next sound of the stretch, to be heard when it is asked for; not copied. */
  void take(short[] sound) {
    waiting.add(sound);
  }

  /** Hears the sound that waits. */
  void hear() {
    waiting.forEach(this::hear);
    waiting.clear();
  }

  private void hear(short[] sound) {
    CompletableFuture<Optional<Pointer>> by = recogniser();
    thread.execute(
        () -> {
          if (!dropped) {
            by.thenAccept(
                made ->
                    made.ifPresent(
                        one ->
                            library.vosk_recognizer_accept_waveform_s(one, sound, sound.length)));
          }
        });
  }

  /** What the library gives for the stretch, as JSON; empty where there was no recogniser. */
  CompletableFuture<Optional<String>> end() {
    hear();
    CompletableFuture<Optional<Pointer>> by = recogniser();
    return CompletableFuture.supplyAsync(() -> by.join().map(this::result), thread);
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
    waiting.clear();
    if (recogniser != null) {
      CompletableFuture<Optional<Pointer>> by = recogniser;
      thread.execute(() -> by.thenAccept(made -> made.ifPresent(library::vosk_recognizer_free)));
    }
  }
}
