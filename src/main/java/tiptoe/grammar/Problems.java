package tiptoe.grammar;

import java.util.ArrayList;
import java.util.List;

/** Collects problems up to a bound: past it, one more mistake teaches the reader nothing new. */
final class Problems {
  static final int LIMIT = 50;
  private static final int LONGEST = 80;

  private final List<Problem> found = new ArrayList<>();

  void add(String file, Place place, String expectation, String instead) {
    if (found.size() < LIMIT) {
      String shown = printable(instead);
      found.add(new Problem(file, place.line(), place.column(), expectation, shown));
    }
  }

  void addAll(List<Problem> more) {
    more.stream().limit(LIMIT - found.size()).forEach(found::add);
  }

  boolean isEmpty() {
    return found.isEmpty();
  }

  List<Problem> toList() {
    return List.copyOf(found);
  }

  /** What stands in a broken file may be anything; a terminal must survive it. */
  private static String printable(String text) {
    String plain = text.replaceAll("\\p{Cntrl}", "\uFFFD");
    return plain.length() <= LONGEST ? plain : plain.substring(0, LONGEST) + "…";
  }
}
