package tiptoe.session;

import java.io.PrintStream;
import tiptoe.exam.Changes;

/** What an examination is shown on while it goes on. */
public interface ExamView extends AutoCloseable {
  /** Where to tell what takes a while. */
  PrintStream progress();

  /**
   * Sound comes in from here on.
   *
   * @param end ends the sound; may be run from any thread
   * @param kept whether it is kept with the record
   */
  void listening(Runnable end, boolean kept);

  /** Whether the user has left, without an end of the examination. */
  boolean left();

  /**
   * A piece of sound, just before it is decoded.
   *
   * @param rmsDb its level in dB below full scale, at most 0
   * @param clipping whether it was cut off because it was too loud
   * @param from second of the examination at which it begins
   * @param to second at which it ends
   */
  void sound(double rmsDb, boolean clipping, double from, double to);

  /**
   * A voice of the tool begins or ends.
   *
   * @param now whether it speaks, so that nothing is heard
   */
  void speaking(boolean now);

  /** The words being said, with an ellipsis where other talk is heard. */
  void partial(String words);

  /** What an utterance changed. */
  void show(Changes changes);

  /**
   * What the microphone reports.
   *
   * @param trouble what is wrong with it now, in a few words; empty when it is well again
   * @param report the same for a line of text, with what was lost
   */
  void microphone(String trouble, String report);

  /** Why sound could not be kept. */
  void problem(String why);

  /** Why nothing more is recorded, though the examination is not over. */
  void stopped(String why);

  /** The examination is over, or was left. */
  void over();

  @Override
  void close();
}
