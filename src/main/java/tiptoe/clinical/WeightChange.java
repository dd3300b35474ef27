package tiptoe.clinical;

/** Change since birth. A loss above 10 % is flagged (NICE NG75, 2017, 1.1.2). */
final class WeightChange {
  static final String SOURCE = "NICE NG75, 2017, 1.1.2";

  private WeightChange() {}

  /** Change in % of the birth weight; negative for a loss. Both in g, above 0. */
  static double percent(double birthWeight, double now) {
    // 100 is taken out last, so that a loss of exactly a tenth stays exactly 10 %.
    return (now - birthWeight) * 100 / birthWeight;
  }
}
