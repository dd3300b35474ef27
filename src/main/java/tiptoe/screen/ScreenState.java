package tiptoe.screen;

import java.nio.file.Path;
import tiptoe.exam.ExamRecord;
import tiptoe.wording.RecordWording;

/**
 * All that one frame shows.
 *
 * @param wording the record as it stands and what follows from it, in words
 * @param partial the words being said now; empty when none are
 * @param notice what the tool has to say beside the record, such as what it is doing before it can
 *     listen, or the lines that were asked for; may have several lines
 * @param sound how the sound comes in
 * @param folder where the record is
 * @param showing what the frame is about
 */
public record ScreenState(
    RecordWording wording,
    String partial,
    String notice,
    SoundState sound,
    Path folder,
    Showing showing) {
  public enum Showing {
    EXAMINATION,
    /** What can be said and pressed, until something else is said or pressed. */
    HELP,
    /** What is left to do, once the sound is over. */
    SUMMARY
  }

  /** A state before anything was heard. */
  public static ScreenState opened(RecordWording wording, Path folder) {
    return new ScreenState(wording, "", "", SoundState.NONE, folder, Showing.EXAMINATION);
  }

  public ExamRecord record() {
    return wording.record();
  }

  public ScreenState withRecord(RecordWording now) {
    return new ScreenState(now, partial, notice, sound, folder, showing);
  }

  public ScreenState withPartial(String words) {
    return new ScreenState(wording, words, notice, sound, folder, showing);
  }

  public ScreenState withNotice(String text) {
    return new ScreenState(wording, partial, text, sound, folder, showing);
  }

  public ScreenState withShowing(Showing now) {
    return new ScreenState(wording, partial, notice, sound, folder, now);
  }

  private ScreenState with(SoundState now) {
    return new ScreenState(wording, partial, notice, now, folder, showing);
  }

  public ScreenState withSound(int loudness, int seconds) {
    return with(sound.with(loudness, seconds));
  }

  public ScreenState withListening(boolean now) {
    return with(sound.withListening(now));
  }

  public ScreenState withTrouble(String text) {
    return with(sound.withTrouble(text));
  }

  public ScreenState withKeepsSound(boolean kept) {
    return with(sound.withKept(kept));
  }

  public ScreenState withSpeaking(boolean now) {
    return with(sound.withSpeaking(now));
  }
}
