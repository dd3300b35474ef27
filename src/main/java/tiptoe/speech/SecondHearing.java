package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.function.Supplier;
import tiptoe.speech.Evidence.Rival;
import tiptoe.speech.Results.Alternative;

/**
 * Hears the sound of an utterance again, once over the decoding graph and once over a loop of
 * phones that knows no words. Both costs are sums over the same pieces of sound, so their
 * difference tells how well the phrases fit: the classical ratio of an utterance's likelihood to
 * that of a filler model.
 */
final class SecondHearing {
  /** Alternatives asked for. */
  private static final int MOST = 4;

  private final VoskLibrary library;
  private final Supplier<Pointer> phrases;
  private final PhoneLoop phones;

  /**
   * @param phrases makes a recogniser over the decoding graph
   */
  SecondHearing(VoskLibrary library, Supplier<Pointer> phrases, PhoneLoop phones) {
    this.library = library;
    this.phrases = phrases;
    this.phones = phones;
  }

  /** What the sound says for an utterance, its first and last words whole in it. */
  Evidence of(short[] sound) {
    // Side by side, since the clinician waits for the outcome.
    CompletableFuture<Double> freely = phones.cost(sound);
    List<Alternative> heard =
        Results.alternatives(Stretch.heard(library, phrases.get(), sound, MOST));
    double free = freely.join();
    Alternative best = heard.get(0);
    List<Rival> rivals = new ArrayList<>();
    for (Alternative other : heard.subList(1, heard.size())) {
      if (rivals.stream().noneMatch(rival -> rival.text().equals(other.text()))
          && !other.text().equals(best.text())) {
        rivals.add(new Rival(other.text(), other.cost() - best.cost()));
      }
    }
    return new Evidence(free - best.cost(), rivals);
  }
}
