package tiptoe.screen;

import java.nio.file.Path;
import tiptoe.clinical.Assessment;
import tiptoe.exam.ExamRecord;

/**
 * All that one frame shows.
 *
 * @param record the record as it stands
 * @param assessment what follows from it
 * @param partial the words being said now; empty when none are
 * @param notice what the tool has to say beside the record, such as what it is doing before it can
 *     listen, or the lines that were asked for; may have several lines
 * @param sound how the sound comes in
 * @param folder where the record is
 * @param showing what the frame is about
 */
public record ScreenState(
    ExamRecord record,
    Assessment assessment,
    String partial,
    String notice,
    SoundState sound,
    Path folder,
    Showing showing) {
  /** What the frame is about. */
  public enum Showing {
    /** The examination itself. */
    EXAMINATION,
    /** What can be said and pressed, until something else is said or pressed. */
    HELP,
    /** What is left to do, once the sound is over. */
    SUMMARY
  }

  /** A state before anything was heard. */
  public static ScreenState opened(ExamRecord record, Assessment assessment, Path folder) {
    return new ScreenState(
        record, assessment, "", "", SoundState.NONE, folder, Showing.EXAMINATION);
  }

  public ScreenState withRecord(ExamRecord newRecord, Assessment newAssessment) {
    return new ScreenState(newRecord, newAssessment, partial, notice, sound, folder, showing);
  }

  public ScreenState withPartial(String words) {
    return new ScreenState(record, assessment, words, notice, sound, folder, showing);
  }

  public ScreenState withNotice(String text) {
    return new ScreenState(record, assessment, partial, text, sound, folder, showing);
  }

  public ScreenState withShowing(Showing now) {
    return new ScreenState(record, assessment, partial, notice, sound, folder, now);
  }

  private ScreenState with(SoundState now) {
    return new ScreenState(record, assessment, partial, notice, now, folder, showing);
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
}
