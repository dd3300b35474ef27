package tiptoe.exam.journal;

/** How a line of the journal is stored. */
interface LineCodec {
  /** As it is. */
  LineCodec PLAIN =
      new LineCodec() {
        @Override
        public byte[] store(byte[] line) {
          return line;
        }

        @Override
        public byte[] load(byte[] stored) {
          return stored;
        }
      };

  /** The bytes to store, without a line feed in them. */
  byte[] store(byte[] line);

  /**
   * The line that was stored.
   *
   * @throws BadLine when it is not what was stored
   */
  byte[] load(byte[] stored) throws BadLine;

  /** A stored line that cannot be had back; the message says what is wrong with it. */
  final class BadLine extends Exception {
    BadLine(String message) {
      super(message);
    }
  }
}
