package tiptoe.screen.review;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** The items that are shown, and the one that is chosen. */
final class ItemList {
  private List<ReviewItem> all = List.of();
  private List<ReviewItem> items = List.of();
  private Filter filter = Filter.ALL;
  private String search = "";
  private int at;

  /** Takes in new items; the chosen one stays so, or the one that took its place is. */
  void update(List<ReviewItem> now) {
    all = now;
    sieve();
  }

  private void sieve() {
    String before = chosen().map(ReviewItem::key).orElse("");
    items = all.stream().filter(filter::shows).filter(this::found).toList();
    List<String> keys = items.stream().map(ReviewItem::key).collect(Collectors.toList());
    at = keys.contains(before) ? keys.indexOf(before) : at;
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
