package tiptoe.session;

import java.io.PrintStream;
import tiptoe.audio.AudioProblem;
import tiptoe.audio.CaptureEvent;
import tiptoe.audio.Chunk;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;

/** What an examination is shown on while it goes on. */
public interface ExamView extends AutoCloseable {
  /** Where to tell what takes a while. */
  PrintStream progress();

  /** Sound comes in from here on; the view may end it. */
  void listening(SampleSource sound, boolean kept);

  /** Whether the user has left, without an end of the examination. */
  boolean left();

  /** A piece of sound, at its second of the examination, just before it is decoded. */
  void sound(Chunk chunk, double second);

  /** The words being said. */
  void partial(String words);

  /** What an utterance changed. */
  void show(Changes changes);

  /** What the microphone reports. */
  void microphone(CaptureEvent event);

  /** Trouble with keeping the sound. */
  void problem(AudioProblem problem);

  /** The examination is over, or was left. */
  void over();

  @Override
  void close();
}
