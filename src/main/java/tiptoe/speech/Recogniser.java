package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import tiptoe.audio.CryFilter;
import tiptoe.audio.Hush;
import tiptoe.audio.LevelLift;
import tiptoe.audio.QuietGate;

/**
 * Turns a stream of sound into utterances. Times count from the first sample it was given. An
 * utterance ends at a pause, or is cut off after 15 s: it then ends in filler, since nobody knows
 * what the rest of it would have made of its last words.
 */
public final class Recogniser implements AutoCloseable {
  /** Samples per second of the sound it takes: mono, 16 bit. */
  public static final int RATE = 16_000;

  /**
   * Samples that are decoded at once, 30 ms: always as many, however the sound comes, so that the
   * same sound is heard the same from a file and from a microphone.
   */
  static final int BLOCK = LevelLift.BLOCK;

  /** Seconds after which an utterance is cut off, as the decoder's settings say. */
  private static final double LONGEST = 15;

  private static final double BLOCK_SECONDS = (double) BLOCK / RATE;

  /** An utterance that ends at a pause is known to have ended no sooner than so, in seconds. */
  private static final double PAUSE = 0.6;

  private static final int FAILED = -1;
  private static final int ENDED = 1;

  private final VoskLibrary library;

  /** Hears each utterance again; null where nothing does. */
  private final SecondPass again;

  private final LevelLift lift = new LevelLift();
  private final QuietGate gate = new QuietGate();
  private final CryFilter cries = new CryFilter();
  private final Hush hush = new Hush();
  private final RecentSound recent = new RecentSound((int) LONGEST + 1);
  private final short[] block = new short[BLOCK];
  private int filled;
  private Pointer recogniser;
  private long fed;
  private double lastEnd;

  /** Whether a cry was heard since an utterance ended: what no word accounts for may be the cry. */
  private boolean cried;

  /** The words so far, once somebody asked; null after more sound. */
  private String partial;

  /**
   * @param again hears each utterance again; null where nothing does
   */
  Recogniser(VoskLibrary library, Pointer recogniser, SecondPass again) {
    this.library = library;
    this.recogniser = recogniser;
    this.again = again;
    library.vosk_recognizer_set_words(recogniser, 1);
  }

  /** Takes more sound, and gives the utterances that ended in it. */
  public List<Hypothesis> accept(short[] samples) {
    return accept(samples, 0, samples.length);
  }

  /** The same for a part of an array. */
  public synchronized List<Hypothesis> accept(short[] samples, int offset, int length) {
    Objects.checkFromIndexSize(offset, length, samples.length);
    opened();
    List<Hypothesis> ended = new ArrayList<>(1);
    for (int at = offset; at < offset + length; ) {
      int taken = Math.min(BLOCK - filled, offset + length - at);
      System.arraycopy(samples, at, block, filled, taken);
      filled += taken;
      at += taken;
      if (filled == BLOCK) {
        ended.addAll(decode());
      }
    }
    return ended;
  }

  private List<Hypothesis> decode() {
    List<Hypothesis> ended = new ArrayList<>(1);
    short[] next = Arrays.copyOf(block, filled);
    filled = 0;
    lift.apply(next);
    hush.take(next);
    gate.pass(next, () -> !partial().isBlank())
        .forEach(piece -> decode(turnedDown(piece)).ifPresent(ended::add));
    return ended;
  }

  private short[] turnedDown(short[] piece) {
    short[] fainter = cries.apply(piece);
    cried |= cries.pitch().isPresent();
    return fainter;
  }

  private Optional<Hypothesis> decode(short[] piece) {
    if (piece.length == 0) {
      return Optional.empty();
    }
    NoiseFloor.under(piece, fed);
    fed += piece.length;
    recent.add(piece);
    if (again != null) {
      again.take(piece);
    }
    partial = null;
    int answer = library.vosk_recognizer_accept_waveform_s(opened(), piece, piece.length);
    if (answer == FAILED) {
      throw new IllegalStateException("the speech library failed on its input");
    }
    if (answer == ENDED) {
      return ended();
    }
    if (again != null) {
      again.follow(partial());
    }
    return Optional.empty();
  }

  /** The words so far of the utterance that is being said, with filler; they may still change. */
  public synchronized String partial() {
    Pointer open = opened();
    if (gate.isShut()) {
      return "";
    }
    if (partial == null) {
      partial = VoskResults.partial(library.vosk_recognizer_partial_result(open));
    }
    return partial;
  }

  /** Whether the sound has just fallen quiet: whoever spoke has paused. */
  public synchronized boolean isQuiet() {
    return hush.isQuiet();
  }

  /** Ends the stream of sound, and gives the utterance it ended in. */
  public synchronized Optional<Hypothesis> finish() {
    List<Hypothesis> ended = new ArrayList<>(filled == 0 ? List.of() : decode());
    decode(cries.finish()).ifPresent(ended::add);
    Optional<Hypothesis> last = heard(library.vosk_recognizer_final_result(opened()));
    return ended.isEmpty() ? last : Optional.of(ended.get(0));
  }

  private Optional<Hypothesis> ended() {
    double now = (double) fed / RATE;
    boolean longest = now - lastEnd >= LONGEST - BLOCK_SECONDS;
    return heard(library.vosk_recognizer_result(opened()))
        .map(one -> longest && now + quiet() - one.end() < PAUSE ? one.cutOff() : one);
  }

  private Optional<Hypothesis> heard(String json) {
    double from = lastEnd;
    lastEnd = (double) fed / RATE;
    short[] sound = cried ? new short[0] : recent.between(from, lastEnd);
    cried = false;
    return VoskResults.utterance(json)
        .map(one -> again == null ? one : again.of(one))
        .map(one -> one.leftOver(LeftOver.seconds(sound, from, one.words())))
        .map(one -> one.later(quiet()));
  }

  /** Seconds of quiet that the library was not given, and does not count. */
  private double quiet() {
    return (double) gate.skipped() / RATE;
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
      if (again != null) {
        again.close();
      }
    }
  }
}
