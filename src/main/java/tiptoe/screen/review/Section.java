package tiptoe.screen.review;

/** The parts of a review, in the order they are gone through. */
public enum Section {
  DECIDE("TO DECIDE"),
  FLAGGED("FLAGGED"),
  BABY("BABY"),
  /** The regions from head to toe, each with a heading of its own. */
  BODY(""),
  REMARKS("REMARKS"),
  UNUSED("HEARD, NOT USED");

  private final String title;

  Section(String title) {
    this.title = title;
  }

  String title() {
    return title;
  }
}
