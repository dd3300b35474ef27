package tiptoe.screen.review;

import java.util.Locale;

/** Which items of a review are shown. */
public enum Filter {
  ALL,
  /** Heard unsurely, or asked about: someone has to decide. */
  UNSURE,
  /** Steps, details and facts that were not stated. */
  MISSING,
  /** What raised a flag, and the flags. */
  FLAGGED,
  /** Edited by a reviewer, corrected or taken back. */
  CHANGED;

  public String words() {
    return name().toLowerCase(Locale.ROOT);
  }

  Filter next() {
    return values()[(ordinal() + 1) % values().length];
  }

  boolean shows(ReviewItem item) {
    return this == ALL || item.of().contains(this);
  }
}
