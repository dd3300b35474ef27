package tiptoe.screen.review;

import java.util.List;
import java.util.Locale;
import tiptoe.protocol.Protocol;

/** The items of a review line by line. */
public final class PlainItems {
  private PlainItems() {}

  /** A heading for each section and region, a line for each item, and what belongs to it below. */
  public static String of(List<ReviewItem> items, Protocol protocol) {
    StringBuilder text = new StringBuilder();
    String before = "";
    for (ReviewItem item : items) {
      String heading = heading(item, protocol);
      if (!heading.equals(before)) {
        text.append(before.isEmpty() ? "" : "\n").append(heading).append('\n');
        before = heading;
      }
      text.append("  ").append(sign(item.sign())).append(' ').append(item.text()).append('\n');
      if (!item.provenance().text().isEmpty()) {
        text.append("      ").append(item.provenance().text()).append('\n');
      }
      item.notes().forEach(note -> text.append("      ").append(note).append('\n'));
    }
    return text.toString();
  }

  static String heading(ReviewItem item, Protocol protocol) {
    return item.section() == Section.BODY
        ? protocol.region(item.region()).orElseThrow().label().toUpperCase(Locale.ROOT)
        : item.section().title();
  }

  private static String sign(ReviewItem.Sign sign) {
    return switch (sign) {
      case DONE -> "+";
      case BENIGN -> "~";
      case ABNORMAL -> "!";
      case SKIPPED -> "-";
      case UNSURE -> "?";
      case KEY -> "#";
      case OPEN -> ".";
      case NONE -> " ";
    };
  }
}
