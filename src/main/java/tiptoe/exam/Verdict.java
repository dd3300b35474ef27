package tiptoe.exam;

import java.util.List;

/**
 * What a new statement does to those before it.
 *
 * @param of the statements it replaces, confirms or contradicts
 * @param why the question to ask, for people; null unless it waits
 */
record Verdict(Effect effect, List<Integer> of, String why) {
  static Verdict stands(List<Integer> replaced) {
    return new Verdict(Effect.STANDS, replaced, null);
  }

  static Verdict confirms(Standing standing) {
    return new Verdict(Effect.CONFIRMS, List.of(standing.base().number()), null);
  }

  boolean waits() {
    return effect == Effect.WAITS;
  }
}
