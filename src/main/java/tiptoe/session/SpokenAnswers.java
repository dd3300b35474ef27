package tiptoe.session;

import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.RejectedExecutionException;
import tiptoe.audio.Speaker;
import tiptoe.exam.Changes;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.wording.SpokenWording;

/** Says in a voice what became of an utterance, on a thread of its own. */
final class SpokenAnswers implements AutoCloseable {
  /** So long after it was played the microphone may still bring it: buffers and echo, in ms. */
  private static final long ECHO_MILLIS = 800;

  private final Synthesiser synthesiser;
  private final ExamSession session;
  private final boolean results;
  private final Speaker speaker = Speaker.on(Optional.empty());
  private final OwnVoice own = new OwnVoice(System::nanoTime);

  private final ExecutorService thread =
      Executors.newSingleThreadExecutor(
          work -> {
            Thread made = new Thread(work, "spoken answers");
            made.setDaemon(true);
            return made;
          });

  private SpokenAnswers(Synthesiser synthesiser, ExamSession session, boolean results) {
    this.synthesiser = synthesiser;
    this.session = session;
    this.results = results;
  }

  /** Empty where no voice is wanted, or there is none. */
  static Optional<SpokenAnswers> of(Settings settings, ExamSession session) {
    return settings.is(Setting.SPOKEN_ANSWERS, "off") || Synthesiser.missing(settings).isPresent()
        ? Optional.empty()
        : Optional.of(
            new SpokenAnswers(
                new Synthesiser(settings), session, settings.is(Setting.SPOKEN_ANSWERS, "all")));
  }

  void answer(Changes changes) {
    say(String.join(". ", SpokenWording.of(changes, session.wording().words(), results)));
  }

  /** Reads back whose examination it is, where that was stated. */
  void identity() {
    if (session.record().baby().isIdentified()) {
      say(session.wording().identityLine());
    }
  }

  private void say(String text) {
    if (text.isEmpty()) {
      return;
    }
    // Counted from here on: nothing is to be heard between the wish to speak and the first sound.
    own.begin(Synthesiser.longest(text).multipliedBy(2));
    try {
      thread.execute(() -> speak(text));
    } catch (RejectedExecutionException e) {
      own.end();
    }
  }

  private void speak(String text) {
    try {
      synthesiser.speak(text).map(speaker::play).ifPresent(Speaker::problem);
      Thread.sleep(ECHO_MILLIS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    } catch (IOException | RuntimeException e) {
      // The screen shows it all; a voice that fails must not stop an examination.
      return;
    } finally {
      own.end();
    }
  }

  /** Whether it spoke so many seconds ago. */
  boolean spoke(double secondsAgo) {
    return own.spoke(secondsAgo);
  }

  @Override
  public void close() {
    thread.shutdownNow();
    speaker.close();
  }
}
