package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonValue;
import tiptoe.protocol.Labels;

/** The 5-minute Apgar score (AAP and ACOG Committee Opinion 644, 2015). */
public final class Apgar {
  static final String SOURCE = "AAP and ACOG Committee Opinion 644, 2015";

  private Apgar() {}

  /** What a 5-minute score says. */
  public enum Band {
    LOW,
    MODERATELY_ABNORMAL,
    REASSURING;

    @JsonValue
    public String id() {
      return Labels.id(this);
    }

    public String text() {
      return id().replace('-', ' ');
    }
  }

  /** The band of a 5-minute total from 0 to 10. */
  static Band band(int total) {
    return total >= 7 ? Band.REASSURING : total >= 4 ? Band.MODERATELY_ABNORMAL : Band.LOW;
  }
}
