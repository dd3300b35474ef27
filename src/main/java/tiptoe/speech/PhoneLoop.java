package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;

/**
 * How well a free sequence of phones explains a stretch of sound: what words are held against. It
 * is asked twice in a row for most stretches, and remembers the last.
 */
final class PhoneLoop {
  private final VoskLibrary library;
  private final Supplier<Pointer> phones;
  private short[] last;
  private CompletableFuture<Double> cost;

  /**
   * @param phones makes a recogniser over the loop of phones
   */
  PhoneLoop(VoskLibrary library, Supplier<Pointer> phones) {
    this.library = library;
    this.phones = phones;
  }

  /** The cost of the likeliest phones, −ln, found on another thread. */
  synchronized CompletableFuture<Double> cost(short[] sound) {
    if (sound != last) {
      last = sound;
      cost =
          CompletableFuture.supplyAsync(
              () ->
                  Results.alternatives(Stretch.heard(library, phones.get(), sound, 1))
                      .get(0)
                      .cost());
    }
    return cost;
  }
}
