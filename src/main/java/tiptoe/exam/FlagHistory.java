package tiptoe.exam;

import java.time.Instant;

/** A flag with the time it was raised and, once the rule ceased to apply, cleared; else null. */
public record FlagHistory(RecordedFlag flag, Instant raised, Instant cleared) {
  public boolean open() {
    return cleared == null;
  }
}
