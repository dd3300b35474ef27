package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonInclude;
import tiptoe.protocol.Identified;

/**
 * A number that a flag rests on.
 *
 * @param step id of the step
 * @param statement number of the statement it was said in
 * @param direction on which side of what is expected it lies
 */
@JsonInclude(JsonInclude.Include.NON_NULL)
public record AbnormalNumber(String step, int statement, Direction direction) {
  /** How a number differs from what is expected; codes of HL7 ObservationInterpretation. */
  public enum Direction implements Identified {
    LOW("L"),
    HIGH("H"),
    /** Not by itself, but with another number beside it. */
    ABNORMAL("A");

    private final String code;

    Direction(String code) {
      this.code = code;
    }

    public String code() {
      return code;
    }

    /** For people. */
    public String label() {
      return name().charAt(0) + id().substring(1);
    }
  }
}
