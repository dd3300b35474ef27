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
  private static final double SHORTEST = 1.2;

  /**
   * Longer ones are a conversation, in seconds: every sentence that was measured is shorter, and
   * babble of 15 s took so long that hearing fell 6 s behind.
   */
  private static final double LONGEST = 8;

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

  /** Whether an utterance is heard so. */
  static boolean takes(Utterance utterance) {
    double seconds = utterance.end() - utterance.start();
    return seconds >= SHORTEST && seconds <= LONGEST;
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
