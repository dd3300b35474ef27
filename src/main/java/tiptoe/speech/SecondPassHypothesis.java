package tiptoe.speech;

import java.util.Arrays;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;

/**
 * An utterance heard again while it is being said: over the decoding graph, over the loop of phones
 * and in free wordings, all of the same sound. A hearing that turns out not to be wanted is dropped
 * on the way.
 */
final class SecondPassHypothesis {
  /** Samples that are handed on at once: as many as are decoded at once. */
  static final int PIECE = 9 * Recogniser.RATE / 100;

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

  /** Takes the sound from where the last one ended. */
  void hear(short[] sound) {
    for (int at = 0; at < sound.length; at += PIECE) {
      short[] piece = Arrays.copyOfRange(sound, at, Math.min(sound.length, at + PIECE));
      phones.hear(piece);
      phrases.ifPresent(follower -> follower.hear(piece));
      wordings.ifPresent(follower -> follower.hear(piece));
    }
    given += sound.length;
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
            .map(json -> utterance.with(Evidence.of(VoskResults.alternatives(json), cost)))
            .orElse(utterance);
    return free.flatMap(CompletableFuture::join)
        .flatMap(json -> FreeWording.of(json, cost))
        .map(heard -> weighed.with(heard.later(from)))
        .orElse(weighed);
  }
}
