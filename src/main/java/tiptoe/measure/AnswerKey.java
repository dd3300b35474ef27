package tiptoe.measure;

import tiptoe.exam.Answer;
import tiptoe.protocol.Side;

/**
 * An answer as far as it is compared: details beside a value are not.
 *
 * @param side null where the step and the value have none
 * @param value id of the value, or the number with its unit
 */
public record AnswerKey(String step, Side side, String value) {
  static AnswerKey of(Answer answer) {
    return new AnswerKey(
        answer.step(),
        answer.side(),
        answer.value() != null ? answer.value() : answer.quantity().toString());
  }

  @Override
  public String toString() {
    return side == null ? step + " " + value : step + " " + side.id() + " " + value;
  }
}
