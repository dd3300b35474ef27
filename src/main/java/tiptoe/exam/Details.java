package tiptoe.exam;

import java.util.Arrays;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Step;

/** How details of the same value, said at different times, go together. */
final class Details {
  private static final String NONE = "none";

  private Details() {}

  /** The details with those said later added to them. */
  static Map<String, String> merge(Step step, Map<String, String> old, Map<String, String> later) {
    Map<String, String> merged = new TreeMap<>(old);
    later.forEach(
        (id, value) ->
            merged.merge(id, value, (was, is) -> isMany(step, id) ? union(was, is) : is));
    return merged;
  }

  /** Whether the same detail was said to be different things. */
  static boolean conflict(Step step, Map<String, String> old, Map<String, String> later) {
    return later.entrySet().stream()
        .anyMatch(
            entry -> {
              String was = old.get(entry.getKey());
              return was != null
                  && step.detail(entry.getKey()).isPresent()
                  && differ(isMany(step, entry.getKey()), was, entry.getValue());
            });
  }

  private static boolean differ(boolean many, String was, String is) {
    return many ? !was.equals(is) && was.equals(NONE) != is.equals(NONE) : !was.equals(is);
  }

  private static boolean isMany(Step step, String id) {
    return step.detail(id).map(Detail::many).orElse(false);
  }

  private static String union(String was, String is) {
    if (was.equals(NONE) || is.equals(NONE)) {
      return is;
    }
    Set<String> all = new LinkedHashSet<>(List.of(was.split(",")));
    all.addAll(Arrays.asList(is.split(",")));
    return String.join(",", all);
  }
}
