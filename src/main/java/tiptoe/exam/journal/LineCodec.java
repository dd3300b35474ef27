package tiptoe.exam.journal;

/** How a line of the journal is stored: as it is, where nothing else is said. */
interface LineCodec {
  LineCodec PLAIN = new LineCodec() {};

  /** The bytes to store, without a line feed in them. */
  default byte[] store(byte[] line) {
    return line;
  }

  /**
   * The line that was stored.
   *
   * @throws BadLine when it is not what was stored
   */
  default byte[] load(byte[] stored) throws BadLine {
    return stored;
  }

  /** A stored line that cannot be had back; the message says what is wrong with it. */
  final class BadLine extends Exception {
    BadLine(String message) {
      super(message);
    }
  }
}
