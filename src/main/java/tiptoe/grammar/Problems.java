package tiptoe.grammar;

import java.util.ArrayList;
import java.util.List;

/** Collects problems up to a bound: past it, one more mistake teaches the reader nothing new. */
final class Problems {
  static final int LIMIT = 50;

  private final List<Problem> found = new ArrayList<>();

  void add(String file, Place place, String expectation, String instead) {
    if (found.size() < LIMIT) {
      found.add(new Problem(file, place.line(), place.column(), expectation, instead));
    }
  }

  void addAll(List<Problem> more) {
    more.stream().limit(LIMIT - found.size()).forEach(found::add);
  }

  List<Problem> toList() {
    return List.copyOf(found);
  }
}
