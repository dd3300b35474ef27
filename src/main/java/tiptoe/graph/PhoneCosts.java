package tiptoe.graph;

/** Costs that come from the acoustic model. */
final class PhoneCosts {
  /** Staying in a phone and leaving it are equally likely in the model: the cost is ln 2. */
  static final float TRANSITION = 0.69f;

  private PhoneCosts() {}
}
