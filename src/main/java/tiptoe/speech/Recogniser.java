package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import tiptoe.audio.Pcm;
import tiptoe.audio.QuietGate;

/**
 * Turns a stream of sound into utterances. Times count from the first sample it was given. An
 * utterance ends at a pause, or is cut off after 15 s: it then ends in filler, since nobody knows
 * what the rest of it would have made of its last words.
 */
public final class Recogniser implements AutoCloseable {
  /** Samples per second of the sound it takes: mono, 16 bit. */
  public static final int RATE = 16_000;

  /** The end of an utterance is looked for once for each piece, so pieces are 0.2 s at most. */
  static final int PIECE = RATE / 5;

  /** Seconds of sound around an utterance that its second hearing takes in. */
  private static final double AROUND = 0.3;

  /** The same where other speech is close. */
  private static final double BESIDE_FILLER = 0.1;

  /** Seconds of sound kept for a second hearing: the longest utterance and some more. */
  private static final int KEPT = 18;

  /** Seconds after which an utterance is cut off, as the decoder's settings say. */
  private static final double LONGEST = 15;

  private static final double PIECE_SECONDS = 0.2;

  /** An utterance that ends at a pause is known to have ended no sooner than so, in seconds. */
  private static final double PAUSE = 0.6;

  private static final int FAILED = -1;
  private static final int ENDED = 1;

  private final VoskLibrary library;
  private final SecondHearing second;
  private final FreeWordingHearing free;
  private final RecentSound recent;
  private final QuietGate gate = new QuietGate();
  private Pointer recogniser;
  private long fed;
  private double lastEnd;

  /**
   * @param second hears phrases again; null where nothing does
   * @param free hears utterances again, in free wordings; null where nothing does
   */
  Recogniser(
      VoskLibrary library, Pointer recogniser, SecondHearing second, FreeWordingHearing free) {
    this.library = library;
    this.recogniser = recogniser;
    this.second = second;
    this.free = free;
    this.recent = second == null && free == null ? null : new RecentSound(KEPT);
    library.vosk_recognizer_set_words(recogniser, 1);
  }

  /** The same that hears nothing in free wordings. */
  Recogniser(VoskLibrary library, Pointer recogniser, SecondHearing second) {
    this(library, recogniser, second, null);
  }

  /** Takes more sound, and gives the utterances that ended in it. */
  public List<Utterance> accept(short[] samples) {
    return accept(samples, 0, samples.length);
  }

  /** The same for sound at 16 kHz. */
  public List<Utterance> accept(Pcm sound) {
    if (sound.sampleRate() != RATE) {
      throw new IllegalArgumentException(
          "expected sound at %d Hz, found %d Hz".formatted(RATE, sound.sampleRate()));
    }
    return accept(sound.samples());
  }

  /** The same for a part of an array. */
  public synchronized List<Utterance> accept(short[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    List<Utterance> ended = new ArrayList<>(1);
    for (int at = offset; at < offset + length; at += PIECE) {
      int end = Math.min(at + PIECE, offset + length);
      gate.pass(Arrays.copyOfRange(samples, at, end), () -> !partial().isBlank())
          .forEach(piece -> decode(piece).ifPresent(ended::add));
    }
    return ended;
  }

  private Optional<Utterance> decode(short[] piece) {
    NoiseFloor.under(piece, fed);
    fed += piece.length;
    if (recent != null) {
      recent.add(piece);
    }
    int answer = library.vosk_recognizer_accept_waveform_s(opened(), piece, piece.length);
    if (answer == FAILED) {
      throw new IllegalStateException("the speech library failed on its input");
    }
    return answer == ENDED ? ended() : Optional.empty();
  }

  /** The words so far of the utterance that is being said, with filler; they may still change. */
  public synchronized String partial() {
    Pointer open = opened();
    return gate.isShut() ? "" : Results.partial(library.vosk_recognizer_partial_result(open));
  }

  /** Ends the stream of sound, and gives the utterance it ended in. */
  public synchronized Optional<Utterance> finish() {
    return heard(library.vosk_recognizer_final_result(opened()));
  }

  private Optional<Utterance> ended() {
    double now = (double) fed / RATE;
    boolean longest = now - lastEnd >= LONGEST - PIECE_SECONDS;
    lastEnd = now;
    return heard(library.vosk_recognizer_result(opened()))
        .map(one -> longest && now + quiet() - one.end() < PAUSE ? one.cutOff() : one);
  }

  private Optional<Utterance> heard(String json) {
    return Results.utterance(json).map(this::heardAgain).map(one -> one.later(quiet()));
  }

  /** Seconds of quiet that the library was not given, and does not count. */
  private double quiet() {
    return (double) gate.skipped() / RATE;
  }

  /** Both second hearings go on side by side, since the clinician waits for the outcome. */
  private Utterance heardAgain(Utterance utterance) {
    if (recent == null) {
      return utterance;
    }
    short[] whole = stretch(utterance.words(), AROUND);
    boolean freely = free != null && FreeWordingHearing.takes(utterance);
    CompletableFuture<Optional<FreeWording>> other =
        freely
            ? CompletableFuture.supplyAsync(() -> free.of(whole))
            : CompletableFuture.completedFuture(Optional.empty());
    Utterance weighed = weighed(utterance, whole);
    double from = Math.max(0, utterance.start() - AROUND);
    return other.join().map(heard -> weighed.with(heard.later(from))).orElse(weighed);
  }

  /** Phrases between other speech are heard again without it, or they would pay for it. */
  private Utterance weighed(Utterance utterance, short[] whole) {
    if (second == null || !utterance.hasPhrase() || utterance.isMostlyFiller()) {
      return utterance;
    }
    short[] phrases =
        utterance.hasFiller() ? stretch(utterance.longestPhrases(), BESIDE_FILLER) : whole;
    return utterance.with(second.of(phrases));
  }

  private short[] stretch(List<Word> words, double around) {
    return recent.between(
        words.get(0).start() - around, words.get(words.size() - 1).end() + around);
  }

  private Pointer opened() {
    if (recogniser == null) {
      throw new IllegalStateException("expected an open recogniser, found a closed one");
    }
    return recogniser;
  }

  /** Closing again does nothing. */
  @Override
  public synchronized void close() {
    if (recogniser != null) {
      library.vosk_recognizer_free(recogniser);
      recogniser = null;
    }
  }
}
