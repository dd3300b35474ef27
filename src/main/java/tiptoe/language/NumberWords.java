package tiptoe.language;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Reads numbers as people say them. One wording can be read in more than one way: "thirty six
 * eight" is 368 or 36.8; which is meant, only the step can tell.
 */
public final class NumberWords {
  /** Zero to nineteen. */
  public static final List<String> BELOW_TWENTY =
      List.of(
          ("zero one two three four five six seven eight nine ten eleven twelve thirteen fourteen"
                  + " fifteen sixteen seventeen eighteen nineteen")
              .split(" "));

  /** Twenty to ninety. */
  public static final List<String> TENS =
      List.of("twenty thirty forty fifty sixty seventy eighty ninety".split(" "));

  private static final List<String> UNITS = BELOW_TWENTY.subList(0, 15);
  private static final List<String> TEENS = BELOW_TWENTY.subList(15, 20);
  private static final Map<String, Double> PARTS = Map.of("half", 0.5, "quarter", 0.25);

  private NumberWords() {}

  /**
   * The readings, likeliest first; empty where the words are no number.
   *
   * @param words lower case, such as {@code [three, thousand, four, hundred, and, twenty]}
   */
  public static List<Double> readings(List<String> words) {
    List<String> rest = new ArrayList<>(words);
    boolean negative = !rest.isEmpty() && List.of("minus", "negative").contains(rest.get(0));
    if (negative) {
      rest.remove(0);
    }
    double part = takePart(rest);
    int point = rest.indexOf("point");
    List<String> whole = point < 0 ? rest : rest.subList(0, point);
    String fraction = point < 0 ? "" : digits(rest.subList(point + 1, rest.size()));
    if (fraction == null || (point >= 0 && fraction.isEmpty())) {
      return List.of();
    }
    Set<Double> readings = new LinkedHashSet<>();
    for (double reading : wholeReadings(whole, point < 0 && part == 0)) {
      double value =
          point < 0 ? reading + part : Double.parseDouble((long) reading + "." + fraction);
      readings.add(negative ? -value : value);
    }
    return List.copyOf(readings);
  }

  private static double takePart(List<String> words) {
    int n = words.size();
    if (n >= 3 && words.get(n - 2).equals("three") && words.get(n - 1).startsWith("quarter")) {
      words.subList(n - 3, n).clear();
      return 0.75;
    }
    if (n >= 3 && PARTS.containsKey(words.get(n - 1)) && words.get(n - 2).equals("a")) {
      double part = PARTS.get(words.get(n - 1));
      words.subList(n - 3, n).clear();
      return part;
    }
    return 0;
  }

  private static List<Double> wholeReadings(List<String> words, boolean mayHideAPoint) {
    if (words.isEmpty()) {
      return mayHideAPoint ? List.of() : List.of(0.0);
    }
    if (words.contains("hundred") || words.contains("thousand")) {
      Double value = compound(words);
      return value == null ? List.of() : List.of(value);
    }
    List<Integer> chunks = chunks(words);
    if (chunks == null) {
      return List.of();
    }
    List<Double> readings = new ArrayList<>();
    readings.add(Double.parseDouble(joined(chunks)));
    int last = chunks.get(chunks.size() - 1);
    if (mayHideAPoint && chunks.size() > 1 && last < 10) {
      readings.add(Double.parseDouble(joined(chunks.subList(0, chunks.size() - 1)) + "." + last));
    }
    return readings;
  }

  private static Double compound(List<String> words) {
    int thousand = words.indexOf("thousand");
    if (thousand >= 0) {
      Double head = underThousand(words.subList(0, thousand));
      Double tail = underThousand(words.subList(thousand + 1, words.size()));
      return head == null || tail == null ? null : (Double) (1000 * Math.max(head, 1) + tail);
    }
    return underThousand(words);
  }

  // "nine hundred and fifty"; also "twenty nine hundred", as a weight is said
  private static Double underThousand(List<String> words) {
    List<String> said = words.stream().filter(word -> !word.equals("and")).toList();
    int hundred = said.indexOf("hundred");
    if (hundred < 0) {
      return said.isEmpty() ? (Double) 0.0 : below100(said);
    }
    List<String> before = said.subList(0, hundred);
    Double head = before.isEmpty() || before.equals(List.of("a")) ? (Double) 1.0 : below100(before);
    List<String> after = said.subList(hundred + 1, said.size());
    Double tail = after.isEmpty() ? (Double) 0.0 : below100(after);
    return head == null || tail == null ? null : (Double) (100 * head + tail);
  }

  private static Double below100(List<String> words) {
    List<String> said = words.equals(List.of("a")) ? List.of("one") : words;
    List<Integer> chunks = chunks(said);
    return chunks == null || chunks.size() != 1 ? null : (Double) (double) chunks.get(0);
  }

  /** The numbers below 100 in the words, one after the other; null where a word is none. */
  private static List<Integer> chunks(List<String> words) {
    List<Integer> chunks = new ArrayList<>();
    boolean openTens = false;
    for (String word : words) {
      int unit = unit(word);
      int tens = TENS.indexOf(word);
      if (unit >= 0) {
        int end = chunks.size() - 1;
        if (openTens && unit >= 1 && unit <= 9) {
          chunks.set(end, chunks.get(end) + unit);
        } else {
          chunks.add(unit);
        }
        openTens = false;
      } else if (tens >= 0) {
        chunks.add(20 + 10 * tens);
        openTens = true;
      } else {
        return null;
      }
    }
    return chunks.isEmpty() ? null : chunks;
  }

  private static int unit(String word) {
    if (word.equals("oh") || word.equals("nought")) {
      return 0;
    }
    int teen = TEENS.indexOf(word);
    return teen >= 0 ? 15 + teen : UNITS.indexOf(word);
  }

  private static String digits(List<String> words) {
    List<Integer> chunks = words.isEmpty() ? List.of() : chunks(words);
    return chunks == null ? null : joined(chunks);
  }

  private static String joined(List<Integer> chunks) {
    StringBuilder text = new StringBuilder();
    chunks.forEach(text::append);
    return text.toString();
  }
}
