package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.function.Supplier;
import java.util.stream.Stream;

/**
 * Hears each utterance again: over the decoding graph, over a loop of phones that knows no words,
 * and in free wordings. The costs are sums over the same sound, so their differences tell how well
 * the phrases and the free wordings fit: the classical ratio of an utterance's likelihood to that
 * of a filler model.
 *
 * <p>It begins as soon as words show, and keeps up: the clinician waits for the outcome, and 15 s
 * of babble heard again at their end would let everything fall behind. The phrases alone wait while
 * it looks as if nobody will ask how they fit, as in most talk.
 */
final class SecondPass implements AutoCloseable {
  /** Seconds of sound around an utterance that are taken in. */
  private static final double AROUND = 0.3;

  /** The same where other speech is close. */
  private static final double BESIDE_FILLER = 0.1;

  /** The first word has begun at most so many seconds before it shows. */
  private static final double SHOWN_AFTER = 1.1;

  /** Sound before and behind the words that makes their evidence worthless, in seconds. */
  private static final double TOO_MUCH = 1.1;

  /** Shorter utterances are a word, whatever it is, in seconds. */
  private static final double SHORTEST = 0.4;

  /** Longer ones are a conversation, whose phrases are not weighed by themselves, in seconds. */
  private static final double LONGEST = 8;

  /** Longer ones are not heard in free wordings, in seconds: the decoder cuts off at 15. */
  private static final double LONGEST_SENTENCE = 14;

  /** Sound kept: the longest utterance and some more, in seconds. */
  private static final int KEPT = 18;

  /** Alternatives asked for. */
  private static final int MOST = 12;

  private final VoskLibrary library;
  private final Supplier<Pointer> phrases;
  private final Supplier<Pointer> phones;

  /** Null where nothing is heard in free wordings. */
  private final Supplier<Optional<Pointer>> wordings;

  /** One for each kind of hearing: with more, each keeps native memory of its own. */
  private final List<ExecutorService> threads =
      Stream.generate(SecondPass::thread).limit(3).toList();

  private final RecentSound recent = new RecentSound(KEPT);
  private double lastEnd;

  /** The utterance that is being said; null while none is. */
  private SecondPassHypothesis current;

  /**
   * @param phrases makes a recogniser over the decoding graph
   * @param phones makes a recogniser over the loop of phones
   * @param wordings makes a recogniser over the graph of free wordings, or none where that could
   *     not be loaded; null where nothing is heard in free wordings
   */
  SecondPass(
      VoskLibrary library,
      Supplier<Pointer> phrases,
      Supplier<Pointer> phones,
      Supplier<Optional<Pointer>> wordings) {
    this.library = library;
    this.phrases = phrases;
    this.phones = phones;
    this.wordings = wordings;
  }

  private static ExecutorService thread() {
    return Executors.newSingleThreadExecutor(
        work -> {
          Thread thread = new Thread(work, "second hearing");
          thread.setDaemon(true);
          return thread;
        });
  }

  /** Takes the next sound, before anything is said about it. */
  void take(short[] sound) {
    recent.add(sound);
  }

  /** Follows the words that are being said. */
  void follow(String partial) {
    if (partial.isBlank()) {
      drop();
      return;
    }
    if (current == null) {
      current = begun(Math.max(recent.seconds() - SHOWN_AFTER, lastEnd));
    }
    double ready = recent.seconds() - AROUND - current.until();
    if (ready * Recogniser.RATE >= SecondPassHypothesis.PIECE) {
      current.hear(recent.between(current.until(), recent.seconds() - AROUND));
    }
    if (isLikelyWeighed(partial)) {
      current.hearPhrases();
    }
    if (recent.seconds() - current.from() > LONGEST_SENTENCE + 2 * SHOWN_AFTER) {
      current.dropWordings();
    }
  }

  private SecondPassHypothesis begun(double from) {
    return new SecondPassHypothesis(
        Math.max(0, from),
        new BackgroundDecoder(library, threads.get(0), () -> Optional.of(phrases.get()), MOST),
        new BackgroundDecoder(library, threads.get(1), () -> Optional.of(phones.get()), 1),
        Optional.ofNullable(wordings)
            .map(made -> new BackgroundDecoder(library, threads.get(2), made, MOST)));
  }

  /** The utterance that has just ended, with what was heard the second time. */
  Hypothesis of(Hypothesis utterance) {
    Hypothesis again = whole(utterance);
    drop();
    lastEnd = utterance.end();
    return isWeighedAlone(utterance) ? alone(again) : again;
  }

  private Hypothesis whole(Hypothesis utterance) {
    boolean weighed = utterance.hasPhrase() && !isWeighedAlone(utterance);
    if (!weighed && !isFreely(utterance)) {
      return utterance;
    }
    if (current == null || !isAround(utterance)) {
      drop();
      current = begun(utterance.start() - AROUND);
    }
    if (!weighed) {
      current.dropPhrases();
    }
    if (!isFreely(utterance)) {
      current.dropWordings();
    }
    current.hear(recent.between(current.until(), utterance.end() + AROUND));
    Hypothesis again = current.given(utterance);
    current = null;
    return again;
  }

  /** Phrases between other speech would pay for it. Where it goes on for long, they shall. */
  private static boolean isWeighedAlone(Hypothesis utterance) {
    return utterance.hasFiller()
        && utterance.hasPhrase()
        && utterance.end() - utterance.start() <= LONGEST;
  }

  /**
   * Whether phrases of what is being said are likely to be weighed as a whole: with filler not
   * before it has become too long to weigh them by themselves, without any never.
   */
  private boolean isLikelyWeighed(String partial) {
    List<String> words = List.of(partial.split(" "));
    boolean phrase = words.stream().anyMatch(word -> !word.equals(Hypothesis.FILLER));
    return phrase
        && (!words.contains(Hypothesis.FILLER)
            || recent.seconds() - current.from() > LONGEST + SHOWN_AFTER + AROUND);
  }

  /** Whether an utterance is heard in free wordings. */
  static boolean isFreely(Hypothesis utterance) {
    double seconds = utterance.end() - utterance.start();
    return seconds >= SHORTEST && seconds <= LONGEST_SENTENCE;
  }

  /** Whether what has been heard so far is the utterance, and not much more. */
  private boolean isAround(Hypothesis utterance) {
    double before = utterance.start() - current.from();
    double behind = current.until() - utterance.end();
    return before >= Math.min(BESIDE_FILLER, utterance.start() - lastEnd)
        && before <= TOO_MUCH
        && behind <= TOO_MUCH;
  }

  /** The longest phrases of an utterance, heard again without the other speech about them. */
  private Hypothesis alone(Hypothesis utterance) {
    if (utterance.isMostlyFiller()) {
      return utterance;
    }
    List<Word> words = utterance.longestPhrases();
    SecondPassHypothesis alone = begun(words.get(0).start() - BESIDE_FILLER);
    alone.dropWordings();
    alone.hear(recent.between(alone.from(), words.get(words.size() - 1).end() + BESIDE_FILLER));
    return alone.given(utterance);
  }

  private void drop() {
    if (current != null) {
      current.drop();
      current = null;
    }
  }

  @Override
  public void close() {
    drop();
    threads.forEach(ExecutorService::shutdown);
  }
}
