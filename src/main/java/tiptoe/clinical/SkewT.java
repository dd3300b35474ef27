package tiptoe.clinical;

import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The skew-t distribution of type 3: two halves of a Student t, stretched to different widths and
 * joined at the mode (Fernández and Steel, J Am Stat Assoc 1998;93:359). Values in kg or cm.
 *
 * @param mu the mode
 * @param sigma the scale, above 0
 * @param nu the skew, above 0; above 1 the upper half is the wider one
 * @param tau the degrees of freedom, above 0
 */
record SkewT(double mu, double sigma, double nu, double tau) {

  /** The z-score with the same share of babies below; exact far out in both tails. */
  double zScore(double y) {
    double z = (y - mu) / sigma;
    double spread = 1 + nu * nu;
    TDistribution t = TDistribution.of(tau);
    return y < mu
        ? Centile.STANDARD.inverseCumulativeProbability(
            2 / spread * t.cumulativeProbability(nu * z))
        : Centile.STANDARD.inverseSurvivalProbability(
            2 * nu * nu / spread * t.survivalProbability(z / nu));
  }

  /** The value with this share of babies below it, above 0 and below 1. */
  double quantile(double share) {
    TDistribution t = TDistribution.of(tau);
    double spread = 1 + nu * nu;
    if (share * spread < 1) {
      return mu + sigma / nu * t.inverseCumulativeProbability(share * spread / 2);
    }
    return mu + sigma * nu * t.inverseSurvivalProbability((1 - share) * spread / (2 * nu * nu));
  }
}
