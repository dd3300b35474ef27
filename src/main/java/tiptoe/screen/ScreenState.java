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
 * @param loudness of the last moment, in steps from 0 to {@link #LOUDEST}; one more means that the
 *     sound was cut off because it was too loud
 * @param seconds length of the sound so far, in s
 * @param listening whether sound is coming in; false before the model is there and after the end
 * @param trouble what is wrong with the sound or its keeping; empty when all is well
 * @param keepsSound whether the sound is kept with the record
 * @param folder where the record is
 * @param showing what the frame is about
 */
public record ScreenState(
    ExamRecord record,
    Assessment assessment,
    String partial,
    String notice,
    int loudness,
    int seconds,
    boolean listening,
    String trouble,
    boolean keepsSound,
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

  /** The loudest step that is not cut off. */
  public static final int LOUDEST = 10;

  /** A state before anything was heard. */
  public static ScreenState opened(ExamRecord record, Assessment assessment, Path folder) {
    return new ScreenState(
        record, assessment, "", "", 0, 0, false, "", false, folder, Showing.EXAMINATION);
  }

  /** The step of the meter for a level in dB below full scale. */
  public static int loudness(double rmsDb, boolean clipping) {
    if (clipping) {
      return LOUDEST + 1;
    }
    double quietest = -60;
    return (int) Math.max(0, Math.min(LOUDEST, Math.round((rmsDb - quietest) / 5)));
  }

  public ScreenState withRecord(ExamRecord newRecord, Assessment newAssessment) {
    return new ScreenState(
        newRecord,
        newAssessment,
        partial,
        notice,
        loudness,
        seconds,
        listening,
        trouble,
        keepsSound,
        folder,
        showing);
  }

  public ScreenState withPartial(String words) {
    return new ScreenState(
        record,
        assessment,
        words,
        notice,
        loudness,
        seconds,
        listening,
        trouble,
        keepsSound,
        folder,
        showing);
  }

  public ScreenState withNotice(String text) {
    return new ScreenState(
        record,
        assessment,
        partial,
        text,
        loudness,
        seconds,
        listening,
        trouble,
        keepsSound,
        folder,
        showing);
  }

  public ScreenState withSound(int newLoudness, int newSeconds) {
    return new ScreenState(
        record,
        assessment,
        partial,
        notice,
        newLoudness,
        newSeconds,
        listening,
        trouble,
        keepsSound,
        folder,
        showing);
  }

  public ScreenState withListening(boolean now) {
    return new ScreenState(
        record,
        assessment,
        partial,
        notice,
        loudness,
        seconds,
        now,
        trouble,
        keepsSound,
        folder,
        showing);
  }

  public ScreenState withTrouble(String text) {
    return new ScreenState(
        record,
        assessment,
        partial,
        notice,
        loudness,
        seconds,
        listening,
        text,
        keepsSound,
        folder,
        showing);
  }

  public ScreenState withKeepsSound(boolean kept) {
    return new ScreenState(
        record,
        assessment,
        partial,
        notice,
        loudness,
        seconds,
        listening,
        trouble,
        kept,
        folder,
        showing);
  }

  public ScreenState withShowing(Showing now) {
    return new ScreenState(
        record,
        assessment,
        partial,
        notice,
        loudness,
        seconds,
        listening,
        trouble,
        keepsSound,
        folder,
        now);
  }
}
