package tiptoe.clinical;

import tiptoe.protocol.Gestation;

/** Gestation from the New Ballard score (Ballard et al., J Pediatr 1991;119:417). */
final class Maturity {
  static final String SOURCE = "New Ballard score, J Pediatr 1991;119:417";
  private static final int FAR_APART_DAYS = 14;

  private Maturity() {}

  /** Completed weeks for a total score from -10 to 50. */
  static int weeks(int score) {
    return Math.floorDiv(120 + 2 * score, 5);
  }

  /** The score of which a gestation in completed weeks is the middle. */
  static int expected(Gestation stated) {
    return Math.round((5 * stated.weeks() - 120) / 2f);
  }

  /** Whether score and stated gestation are more than 2 weeks apart. */
  static boolean differs(int score, Gestation stated) {
    return Math.abs(7 * weeks(score) - stated.totalDays()) > FAR_APART_DAYS;
  }
}
