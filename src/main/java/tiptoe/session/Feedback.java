package tiptoe.session;

import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import tiptoe.audio.Speaker;
import tiptoe.audio.Tone;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.RecordedFlag;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.wording.OutcomeWording;

/** Tells by a tone what became of a phrase: the most important of what happened, and one only. */
public final class Feedback implements AutoCloseable {
  private static final long LONGEST_TONE = 3000;

  private final Speaker speaker;
  private final double volume;
  private final ExamSession session;
  private final SpokenAnswers voice;
  private List<RecordedFlag> flags;

  private Feedback(Speaker speaker, double volume, ExamSession session, SpokenAnswers voice) {
    this.speaker = speaker;
    this.volume = volume;
    this.session = session;
    this.voice = voice;
    this.flags = session == null ? List.of() : session.record().openFlags();
  }

  public static Feedback silent() {
    return new Feedback(null, 0, null, null);
  }

  public static Feedback of(Settings settings, ExamSession session) {
    SpokenAnswers voice = SpokenAnswers.of(settings, session).orElse(null);
    return settings.is(Setting.TONES, "on")
        ? new Feedback(Speaker.on(Optional.empty()), volume(settings), session, voice)
        : new Feedback(null, 0, session, voice);
  }

  // The middle one is heard at the cot and not across the room; 12 dB between one and the next,
  // since loudness follows the square.
  private static double volume(Settings settings) {
    return switch (settings.get(Setting.TONE_VOLUME)) {
      case "soft" -> 0.25;
      case "loud" -> 1;
      default -> 0.5;
    };
  }

  void hear(Changes changes) {
    if (speaker != null) {
      tone(changes).ifPresent(tone -> speaker.play(tone.render(volume)));
    }
    if (voice != null) {
      voice.answer(changes);
    }
  }

  /** Tells that nothing more is recorded; returns when that was heard, or cannot be. */
  public void stopped() {
    if (speaker != null) {
      CompletableFuture<Void> heard =
          speaker
              .play(Tone.STOPPED.render(volume))
              .completeOnTimeout(null, LONGEST_TONE, TimeUnit.MILLISECONDS);
      // Without a loudspeaker the screen tells it alone.
      Speaker.problem(heard);
    }
  }

  Optional<Tone> tone(Changes changes) {
    List<RecordedFlag> before = flags;
    flags = session.record().openFlags();
    if (changes.of(Event.Paused.class).findAny().isPresent()) {
      return Optional.of(Tone.PAUSED);
    }
    boolean pressing = flags.stream().anyMatch(flag -> isPressing(flag) && !before.contains(flag));
    if (pressing) {
      return Optional.of(Tone.FLAG);
    }
    return switch (OutcomeWording.of(changes, session.wording().words()).kind()) {
      case ASKED -> Optional.of(Tone.QUESTION);
      case OFFERED -> Optional.of(Tone.UNSURE);
      case NOT_UNDERSTOOD -> Optional.of(Tone.NOT_UNDERSTOOD);
      case RECORDED -> Optional.of(Tone.ACCEPTED);
      case DONE -> Optional.of(Tone.DONE);
      case TALK -> Optional.empty();
    };
  }

  /** Says whose examination begins, where a voice is wanted. */
  public void begin() {
    if (voice != null) {
      voice.identity();
    }
  }

  /** Whether a voice spoke so many seconds ago, so that what came in then is its own. */
  boolean spoke(double secondsAgo) {
    return voice != null && voice.spoke(secondsAgo);
  }

  @Override
  public void close() {
    if (voice != null) {
      voice.close();
    }
    if (speaker != null) {
      speaker.close();
    }
  }

  // What waits for an answer is asked first, unless it could not wait for one.
  private static boolean isPressing(RecordedFlag flag) {
    boolean mild = flag.level().equals("note");
    return flag.provisional() == null ? !mild : !mild && !flag.level().equals("arrange");
  }
}
