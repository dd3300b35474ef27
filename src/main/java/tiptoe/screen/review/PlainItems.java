package tiptoe.screen.review;

import java.util.List;
import java.util.Locale;
import tiptoe.wording.RecordWording;

/** The items of a review line by line. */
public final class PlainItems {
  private PlainItems() {}

  /** A heading for each section and region, a line for each item, and what belongs to it below. */
  public static String of(List<ReviewItem> items, RecordWording wording) {
    StringBuilder text = new StringBuilder();
    String before = "";
    for (ReviewItem item : items) {
      String heading = heading(item, wording);
      if (!heading.equals(before)) {
        text.append(before.isEmpty() ? "" : "\n").append(heading).append('\n');
        before = heading;
      }
      text.append("  ").append(item.sign().ascii()).append(' ').append(item.text()).append('\n');
      if (!item.provenance().text().isEmpty()) {
        text.append("      ").append(item.provenance().text()).append('\n');
      }
      item.notes().forEach(note -> text.append("      ").append(note).append('\n'));
    }
    return text.toString();
  }

  static String heading(ReviewItem item, RecordWording wording) {
    return item.section() == Section.BODY
        ? wording
            .words()
            .region(wording.record().protocol().region(item.region()).orElseThrow())
            .toUpperCase(Locale.ROOT)
        : item.section().title();
  }
}
