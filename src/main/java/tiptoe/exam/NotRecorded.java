package tiptoe.exam;

/** Events could not be kept, so nothing of them counts; the message is for people. */
public final class NotRecorded extends RuntimeException {
  public NotRecorded(String message, Throwable cause) {
    super(message, cause);
  }
}
