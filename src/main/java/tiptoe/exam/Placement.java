package tiptoe.exam;

import java.util.List;
import tiptoe.finding.Finding;

/**
 * What a new statement does to those before it.
 *
 * @param of the statements it replaces, confirms or contradicts
 * @param against what it contradicts; null unless it waits for a choice between two findings
 */
record Placement(Effect effect, List<Integer> of, Finding against) {
  static Placement stands(List<Integer> replaced) {
    return new Placement(Effect.STANDS, replaced, null);
  }

  static Placement confirms(StandingFinding standing) {
    return new Placement(Effect.CONFIRMS, List.of(standing.base().number()), null);
  }

  boolean waits() {
    return effect == Effect.WAITS;
  }
}
