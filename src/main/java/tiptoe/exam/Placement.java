package tiptoe.exam;

import java.util.List;

/**
 * What a new statement does to those before it.
 *
 * @param of the statements it replaces, confirms or contradicts
 * @param why the question to ask, for people; null unless it waits
 */
record Placement(Effect effect, List<Integer> of, String why) {
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
