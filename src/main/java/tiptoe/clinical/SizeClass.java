package tiptoe.clinical;

import tiptoe.protocol.Identified;

/**
 * Size for gestation. Weight: small below the 10th centile, severely small below the 3rd, large
 * above the 90th; length and head circumference are marked only below the 3rd and above the 97th
 * (common practice with the INTERGROWTH-21st standard).
 */
public enum SizeClass implements Identified {
  SEVERELY_SMALL,
  SMALL,
  EXPECTED,
  LARGE;

  /** The class of a centile; on a line itself a baby is as expected. */
  static SizeClass of(SizeMeasure measure, Centile centile) {
    double percent = centile.percent();
    if (measure == SizeMeasure.WEIGHT) {
      return percent < 3 ? SEVERELY_SMALL : percent < 10 ? SMALL : percent > 90 ? LARGE : EXPECTED;
    }
    return percent < 3 ? SMALL : percent > 97 ? LARGE : EXPECTED;
  }
}
