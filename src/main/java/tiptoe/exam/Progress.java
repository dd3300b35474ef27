package tiptoe.exam;

/**
 * How far a region is.
 *
 * @param region id of the region
 * @param answered slots with an answer; a side is a slot of its own
 * @param total slots to answer for this baby; an optional step counts once it is answered
 * @param keyMissing key slots without an answer
 */
public record Progress(String region, int answered, int total, int keyMissing) {
  public boolean done() {
    return answered == total;
  }
}
