package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.Optional;
import java.util.function.Supplier;

/**
 * Hears an utterance again in free wordings: over a graph in which any word of the domain may
 * follow any other, some more likely than others. What it gives is held against the loop of phones,
 * as the phrases of {@link SecondHearing} are.
 */
final class FreeWordingHearing {
  /** Shorter ones hold no statement in other words, in seconds. */
  static final double SHORTEST = 1.2;

  private final VoskLibrary library;
  private final Supplier<Optional<Pointer>> wordings;
  private final PhoneLoop phones;

  /**
   * @param wordings makes a recogniser over the graph of free wordings; empty where there is none
   */
  FreeWordingHearing(VoskLibrary library, Supplier<Optional<Pointer>> wordings, PhoneLoop phones) {
    this.library = library;
    this.wordings = wordings;
    this.phones = phones;
  }

  /** What is heard in a stretch of sound; empty where it is silent. */
  Optional<FreeWording> of(short[] sound) {
    Optional<Pointer> recogniser = wordings.get();
    if (recogniser.isEmpty()) {
      return Optional.empty();
    }
    String heard = Stretch.heard(library, recogniser.get(), sound, 1);
    double cost = Results.alternatives(heard).get(0).cost();
    double free = phones.cost(sound).join();
    return Results.likeliest(heard).map(said -> new FreeWording(said.words(), free - cost));
  }
}
