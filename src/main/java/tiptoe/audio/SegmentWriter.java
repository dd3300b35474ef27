package tiptoe.audio;

import java.io.Closeable;
import java.io.IOException;

/** Writes one segment as the samples come. */
interface SegmentWriter extends Closeable {
  void append(short[] samples) throws IOException;

  /** Number of samples given so far. */
  int length();

  /** Waits until all that was given has reached the disk. */
  void force() throws IOException;
}
