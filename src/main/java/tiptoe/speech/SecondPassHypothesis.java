package tiptoe.speech;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.function.Function;
import tiptoe.speech.Hypothesis.Rival;
import tiptoe.speech.VoskResults.Alternative;

/**
 * An utterance heard again while it is being said: over the decoding graph, over the loop of phones
 * and in free wordings, all of the same sound. A hearing that turns out not to be wanted is dropped
 * on the way.
 */
final class SecondPassHypothesis {
  /** Samples that are handed on at once: as many as are decoded at once. */
  static final int PIECE = 30 * Recogniser.RATE / 100;

  private final double from;
  private final BackgroundDecoder phones;
  private Optional<BackgroundDecoder> phrases;
  private Optional<BackgroundDecoder> wordings;
  private long given;

  /**
   * @param from where the sound begins, in seconds
   */
  SecondPassHypothesis(
      double from,
      BackgroundDecoder phrases,
      BackgroundDecoder phones,
      Optional<BackgroundDecoder> wordings) {
    this.from = from;
    this.phones = phones;
    this.phrases = Optional.of(phrases);
    this.wordings = wordings;
  }

  /** Where the sound begins, in seconds. */
  double from() {
    return from;
  }

  /** Up to where it has been given the sound, in seconds. */
  double until() {
    return from + (double) given / Recogniser.RATE;
  }

  /** Takes the sound from where the last one ended; over the decoding graph it is not heard yet. */
  void hear(short[] sound) {
    for (int at = 0; at < sound.length; at += PIECE) {
      short[] piece = Arrays.copyOfRange(sound, at, Math.min(sound.length, at + PIECE));
      phones.take(piece);
      phrases.ifPresent(decoder -> decoder.take(piece));
      wordings.ifPresent(decoder -> decoder.take(piece));
    }
    phones.hear();
    wordings.ifPresent(BackgroundDecoder::hear);
    given += sound.length;
  }

  /** Hears over the decoding graph what it has taken so far. */
  void hearPhrases() {
    phrases.ifPresent(BackgroundDecoder::hear);
  }

  void dropPhrases() {
    phrases.ifPresent(BackgroundDecoder::drop);
    phrases = Optional.empty();
  }

  void dropWordings() {
    wordings.ifPresent(BackgroundDecoder::drop);
    wordings = Optional.empty();
  }

  void drop() {
    dropPhrases();
    dropWordings();
    phones.drop();
  }

  /** What the whole sound says for the utterance, which is given it; nothing is heard after it. */
  Hypothesis given(Hypothesis utterance) {
    CompletableFuture<Optional<String>> loop = phones.end();
    Optional<CompletableFuture<Optional<String>>> strict = phrases.map(BackgroundDecoder::end);
    Optional<CompletableFuture<Optional<String>>> free = wordings.map(BackgroundDecoder::end);
    double cost = VoskResults.alternatives(loop.join().orElseThrow()).get(0).cost();
    Hypothesis weighed =
        strict
            .flatMap(CompletableFuture::join)
            .map(
                json -> weighed(utterance, VoskResults.alternatives(json), Alternative::text, cost))
            .orElse(utterance);
    return free.flatMap(CompletableFuture::join)
        .flatMap(json -> inFreeWordings(json, cost))
        .map(heard -> weighed.freely(heard.later(from)))
        .orElse(weighed);
  }

  /**
   * @param ways to hear the sound over the decoding graph, likeliest first
   * @param text what is kept of a way
   * @param phones the cost of the likeliest sequence of phones for the same sound
   */
  private static Hypothesis weighed(
      Hypothesis utterance,
      List<Alternative> ways,
      Function<Alternative, String> text,
      double phones) {
    Alternative best = ways.get(0);
    Set<String> known = new HashSet<>(Set.of(text.apply(best)));
    List<Rival> rivals = new ArrayList<>();
    for (Alternative other : ways.subList(1, ways.size())) {
      if (known.add(text.apply(other))) {
        rivals.add(new Rival(text.apply(other), other.cost() - best.cost()));
      }
    }
    return utterance.weighed(phones - best.cost(), rivals);
  }

  private static Optional<Hypothesis> inFreeWordings(String json, double phones) {
    List<Alternative> ways = VoskResults.alternatives(json);
    return ways.get(0).heard().map(said -> weighed(said, ways, Alternative::parted, phones));
  }
}
