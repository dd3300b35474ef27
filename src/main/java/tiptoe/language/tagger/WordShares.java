package tiptoe.language.tagger;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tiptoe.files.Shipped;
import tiptoe.language.Interpreter;

/** How often words are said, and follow each other, in everyday speech. */
final class WordShares {
  private static final String FILE = "word-shares.txt";
  private static final double MILLION = 1e6;
  private static final double TEN_THOUSAND = 1e4;

  private final Map<String, Double> shares = new HashMap<>();
  private final Map<String, SortedMap<String, Double>> next = new HashMap<>();

  private WordShares() {}

  static List<String> text() {
    return Shipped.lines(Interpreter.class, FILE).stream()
        .filter(line -> !line.startsWith("#"))
        .toList();
  }

  /** The words alone. */
  static Set<String> words() {
    return text().stream()
        .map(line -> line.substring(0, line.indexOf(' ')))
        .collect(Collectors.toSet());
  }

  /** The words this project ships. */
  static WordShares shipped() {
    WordShares all = new WordShares();
    for (String line : text()) {
      String[] parts = line.split(" ");
      all.shares.put(parts[0], Double.parseDouble(parts[1]) / MILLION);
      SortedMap<String, Double> behind = new TreeMap<>();
      for (int i = 2; i < parts.length; i += 2) {
        behind.put(parts[i], Double.parseDouble(parts[i + 1]) / TEN_THOUSAND);
      }
      all.next.put(parts[0], behind);
    }
    return all;
  }

  /** Word to its share of all that is said. */
  Map<String, Double> shares() {
    return shares;
  }

  /** The words known to follow a word, with their shares of what follows it. */
  SortedMap<String, Double> behind(String word) {
    return next.getOrDefault(word, new TreeMap<>());
  }
}
