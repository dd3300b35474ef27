package tiptoe.exam;

import java.util.List;
import tiptoe.finding.Finding;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Whether two different values of one step, on the same side, exclude each other.
 *
 * @param saidTogether whether both come from one utterance
 */
record Rivalry(Step step, StandingFinding old, Finding statement, boolean saidTogether) {

  boolean exists() {
    boolean leftOut = Value.NOT_EXAMINED.equals(statement.value()) || old.notExamined();
    if (leftOut || step.isMeasured()) {
      return true;
    }
    if (old.value().equals(statement.value())) {
      return !step.many() && !saidTogether;
    }
    if (old.denied().contains(statement.value()) || statement.denied().contains(old.value())) {
      return true;
    }
    if (deniesOnly(old.denied(), old.onlyDenies(step), statement.value())
        || deniesOnly(statement.denied(), isNormal(statement.value()), old.value())) {
      return false;
    }
    return !step.many()
        || isNormal(old.value()) && isAbnormal(step, statement.value())
        || isAbnormal(step, old.value()) && isNormal(statement.value());
  }

  /** "No crepitus" says nothing against a swelling. */
  private boolean deniesOnly(List<String> denied, boolean normal, String other) {
    return normal && !denied.isEmpty() && !isNormal(other);
  }

  private boolean isNormal(String value) {
    return norm(step, value) == Norm.NORMAL;
  }

  static boolean isAbnormal(Step step, String value) {
    return norm(step, value) == Norm.ABNORMAL;
  }

  private static Norm norm(Step step, String value) {
    return step.value(String.valueOf(value)).map(Value::norm).orElse(Norm.NEUTRAL);
  }
}
