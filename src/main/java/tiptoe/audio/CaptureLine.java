package tiptoe.audio;

import java.time.Duration;

/** An open line that sound comes in by. */
interface CaptureLine extends AutoCloseable {
  /**
   * The sound that has come in since the last call, 16 kHz mono 16 bit, possibly none. Does not
   * wait for any.
   *
   * @throws AudioProblem if the line has failed and must be opened anew
   */
  short[] read() throws AudioProblem;

  /** How much sound the driver keeps between two reads. */
  Duration buffer();

  @Override
  void close();

  /** Opens the line of a chosen device, again and again if need be. */
  interface Opener {
    CaptureLine open() throws AudioProblem;
  }
}
