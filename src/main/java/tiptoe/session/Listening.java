package tiptoe.session;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import tiptoe.audio.AudioFile;
import tiptoe.audio.CaptureEvent;
import tiptoe.audio.Gap;
import tiptoe.audio.Microphone;
import tiptoe.audio.PacedSource;
import tiptoe.audio.Pcm;
import tiptoe.audio.Recorder;
import tiptoe.audio.SampleSource;
import tiptoe.audio.SegmentStore;
import tiptoe.audio.SoundKeeper;
import tiptoe.exam.Changes;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.Phase;
import tiptoe.exam.journal.OpenExam;
import tiptoe.speech.Hypothesis;
import tiptoe.wording.ProblemWording;

/** Brings sound to an examination, from a microphone or from recordings. */
public final class Listening {
  private final ExamSession session;
  private final ExamView view;
  private final Feedback feedback;
  private final Dictation dictation;
  private final Clock clock = Clock.systemDefaultZone();

  private volatile Microphone microphone;
  private volatile SampleSource now;
  private volatile boolean ended;

  /** What is wrong with the microphone now; null where nothing is. */
  private volatile CaptureEvent.Trouble trouble;

  public Listening(Engine engine, ExamSession session, ExamView view, Feedback feedback) {
    this.session = session;
    this.view = view;
    this.feedback = feedback;
    dictation =
        new Dictation(
            engine, session, words -> view.partial(words.replace(Hypothesis.FILLER, "…").strip()));
  }

  /** Brings the sound of an examination. */
  @FunctionalInterface
  public interface Sound {
    void hear(Listening by) throws IOException;
  }

  /**
   * Listens for an examination; tells at once when its record is gone or can no longer be kept.
   *
   * @param goesOn whether it was begun before
   */
  public void examine(OpenExam open, boolean goesOn, Sound sound) throws IOException {
    RecordWatch watch =
        RecordWatch.start(
            open::isInPlace,
            () -> {
              stopped(open.whereItWas());
              end();
            });
    try (watch) {
      sound.hear(this);
    } catch (IOException | NotRecorded e) {
      if (open.isInPlace() && (goesOn || open.hasBegun())) {
        stopped(ProblemWording.of(e));
      }
      throw e;
    }
    open.requireInPlace();
    view.over();
  }

  private void stopped(String why) {
    view.stopped(why);
    feedback.stopped();
  }

  /**
   * Listens until the examination ends or is left.
   *
   * @param device the microphone or a part of its name; null for the first one
   * @param store where the sound is kept; null where it is not
   */
  public void microphone(String device, SegmentStore store) throws IOException {
    double offset = offset(store);
    try (Microphone opened =
            Microphone.open(Optional.ofNullable(device), clock, event -> reported(event, offset));
        SampleSource sound =
            new SeenSound(
                new OwnVoiceGate(
                    opened.listen(),
                    feedback::spoke,
                    opened::seconds,
                    view::speaking,
                    second -> session.examination().spokeUntil(offset + second)),
                view,
                offset);
        Recorder recorder =
            store == null
                ? null
                : Recorder.start(
                    kept(opened), store, problem -> view.problem(problem.getMessage()))) {
      microphone = opened;
      hearing(sound);
      view.listening(sound::end, store != null);
      dictation.listen(sound, offset, this::changed);
      noteMissing(offset + opened.seconds());
      tellUnsaved(recorder == null ? 0 : recorder.unsaved());
    }
  }

  private void tellUnsaved(long samples) {
    if (samples > 0) {
      view.progress().println(samples / Pcm.RATE + " s of sound could not be stored");
    }
  }

  private void hearing(SampleSource sound) {
    now = sound;
    if (ended) {
      sound.end();
    }
  }

  /** Ends the sound, and hears no other; from any thread. */
  public void end() {
    ended = true;
    SampleSource sound = now;
    if (sound != null) {
      sound.end();
    }
  }

  /**
   * Listens to one recording after the other.
   *
   * @param fast as fast as possible, not in real time
   * @param store where the sound is kept; null where it is not
   */
  public void recordings(List<Path> recordings, boolean fast, SegmentStore store)
      throws IOException {
    double offset = offset(store);
    try (SoundKeeper keeper =
        store == null
            ? null
            : new SoundKeeper(store, problem -> view.problem(problem.getMessage()))) {
      double seconds = 0;
      for (Path recording : recordings) {
        if (session.record().phase() != Phase.ENDED && !view.left() && !ended) {
          SampleSource file = AudioFile.open(recording);
          SampleSource paced = fast ? file : new PacedSource(file);
          SampleSource kept =
              keeper == null ? paced : new KeptSound(paced, keeper::keep, seconds, this::paused);
          try (SampleSource sound = new SeenSound(kept, view, offset + seconds)) {
            hearing(sound);
            view.listening(sound::end, store != null);
            seconds += dictation.listen(sound, offset + seconds, this::changed);
          }
        }
      }
      tellUnsaved(keeper == null ? 0 : keeper.unsaved());
    }
  }

  /** Told on a thread of the microphone's. */
  private void reported(CaptureEvent event, double offset) {
    view.microphone(
        event instanceof CaptureEvent.Trouble now ? now.cause().words() : "",
        MicrophoneWording.of(event));
    if (event instanceof CaptureEvent.Trouble found) {
      noteMute(trouble, found, offset);
      trouble = found;
    } else if (event instanceof CaptureEvent.Recovered back) {
      trouble = null;
      Gap gap = back.gap();
      // All other losses show in the sound itself; zeros come in as if they were sound.
      if (gap.cause() == Gap.Cause.SILENT) {
        double from = offset + (double) gap.from() / Pcm.RATE;
        view.show(session.gap(from, gap.seconds(), gap.cause().words()));
      }
    }
  }

  /** Notes that a microphone was mute before it was gone. */
  private void noteMute(CaptureEvent.Trouble before, CaptureEvent.Trouble now, double offset) {
    Microphone muted = microphone;
    if (before != null && before.cause() == Gap.Cause.SILENT && muted != null) {
      double seconds = Duration.between(now.since(), now.at()).toMillis() / 1000.0;
      double from = Math.max(0, offset + muted.seconds() - seconds);
      view.show(session.gap(from, seconds, before.cause().words()));
    }
  }

  /** Notes what was not heard up to the end, where no sound came back. */
  private void noteMissing(double end) {
    CaptureEvent.Trouble last = trouble;
    if (last != null && session.record().phase() != Phase.ENDED) {
      double seconds = Duration.between(last.since(), clock.instant()).toMillis() / 1000.0;
      double from = last.cause() == Gap.Cause.SILENT ? Math.max(0, end - seconds) : end;
      view.show(session.gap(from, seconds, last.cause().words()));
    }
  }

  private SampleSource kept(Microphone opened) {
    return new UnpausedSound(opened.listen(), this::paused);
  }

  private boolean paused() {
    return session.record().phase() == Phase.PAUSED;
  }

  private double offset(SegmentStore store) {
    return store == null ? session.record().seconds() : (double) store.offset() / Pcm.RATE;
  }

  private void changed(Changes changes) {
    view.show(changes);
    feedback.hear(changes);
  }
}
