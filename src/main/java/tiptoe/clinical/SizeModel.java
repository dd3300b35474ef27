package tiptoe.clinical;

/** How one measure is spread among babies of one sex and gestation; values in g or cm. */
public interface SizeModel {

  /** The z-score of a value above 0. */
  double zScore(double value);

  /** The value at a centile above 0 and below 100. */
  double valueAt(double centile);

  /** The share of babies below a value above 0, in percent. */
  default Centile centile(double value) {
    return Centile.ofZScore(zScore(value));
  }
}
