package tiptoe.screen.review;

import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** The items that are shown, and the one that is chosen. */
final class ItemList {
  private List<ReviewItem> all = List.of();
  private List<ReviewItem> items = List.of();
  private Filter filter = Filter.ALL;
  private String search = "";
  private int at;

  /**
   * Takes in new items. The chosen one stays so while it is in its section; where it is settled and
   * listed elsewhere, the one that took its place is chosen, so that a reviewer goes on from there.
   */
  void update(List<ReviewItem> now) {
    all = now;
    sieve();
  }

  private void sieve() {
    ReviewItem before = chosen().orElse(null);
    items = all.stream().filter(filter::shows).filter(this::found).toList();
    for (int i = 0; i < items.size() && before != null; i++) {
      ReviewItem now = items.get(i);
      at = now.key().equals(before.key()) && now.section() == before.section() ? i : at;
    }
    at = Math.max(0, Math.min(at, items.size() - 1));
  }

  private boolean found(ReviewItem item) {
    String text = item.text() + " " + item.provenance().words() + " " + item.region();
    return text.toLowerCase(Locale.ROOT).contains(search.toLowerCase(Locale.ROOT));
  }

  List<ReviewItem> items() {
    return items;
  }

  Optional<ReviewItem> chosen() {
    return items.isEmpty() ? Optional.empty() : Optional.of(items.get(at));
  }

  int at() {
    return at;
  }

  Filter filter() {
    return filter;
  }

  String search() {
    return search;
  }

  void move(int by) {
    at = Math.max(0, Math.min(items.size() - 1, at + by));
  }

  void nextFilter() {
    filter = filter.next();
    sieve();
  }

  void search(String words) {
    search = words;
    sieve();
  }

  /** Goes to the first item of a region; false when none is shown. */
  boolean jump(String region) {
    for (int i = 0; i < items.size(); i++) {
      if (items.get(i).section() == Section.BODY && region.equals(items.get(i).region())) {
        at = i;
        return true;
      }
    }
    return false;
  }
}
