package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.Executor;
import java.util.concurrent.Executors;
import java.util.function.Supplier;

/**
 * Hears one stretch of sound piece by piece, on other threads than the one that brings it: what
 * takes long is done by the time the stretch ends.
 */
final class Follower {
  private static final Executor THREADS =
      Executors.newCachedThreadPool(
          work -> {
            Thread thread = new Thread(work, "second hearing");
            thread.setDaemon(true);
            return thread;
          });

  private final VoskLibrary library;

  /** All that was asked of it so far, in order; the recogniser, or empty where there is none. */
  private CompletableFuture<Optional<Pointer>> work;

  private volatile boolean dropped;

  /**
   * @param recognisers makes a recogniser, or none; may take its time
   * @param alternatives most of them that are given
   */
  Follower(VoskLibrary library, Supplier<Optional<Pointer>> recognisers, int alternatives) {
    this.library = library;
    work =
        CompletableFuture.supplyAsync(recognisers, THREADS)
            .thenApply(
                made -> {
                  made.ifPresent(
                      one -> {
                        library.vosk_recognizer_set_words(one, 1);
                        library.vosk_recognizer_set_max_alternatives(one, alternatives);
                      });
                  return made;
                });
  }

  /** Takes the next sound of the stretch; not copied. */
  void hear(short[] sound) {
    work =
        work.thenApplyAsync(
            recogniser -> {
              recogniser
                  .filter(one -> !dropped)
                  .ifPresent(
                      one -> library.vosk_recognizer_accept_waveform_s(one, sound, sound.length));
              return recogniser;
            },
            THREADS);
  }

  /** What the library gives for the stretch, as JSON; empty where there was no recogniser. */
  CompletableFuture<Optional<String>> end() {
    return work.thenApplyAsync(
        recogniser ->
            recogniser.map(
                one -> {
                  try {
                    return library.vosk_recognizer_final_result(one);
                  } finally {
                    library.vosk_recognizer_free(one);
                  }
                }),
        THREADS);
  }

  /** Nobody asks what was heard. */
  void drop() {
    dropped = true;
    work.thenAcceptAsync(
        recogniser -> recogniser.ifPresent(library::vosk_recognizer_free), THREADS);
  }
}
