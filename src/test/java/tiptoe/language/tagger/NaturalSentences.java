package tiptoe.language.tagger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tiptoe.finding.Finding;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpreter;
import tiptoe.language.TypedText;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

/** Natural sentences with what they state, and how well an interpreter reads them. */
public final class NaturalSentences {
  static final Path FOLDER = Path.of("src/test/resources/tiptoe/language/natural");

  /**
   * A sentence and what it states.
   *
   * @param expected step and side to the value or number
   */
  record Row(String text, Map<String, List<String>> expected) {}

  /** Counts of statements: right, wrong, missed, and the two kinds of error that mislead most. */
  static final class Score {
    int right;
    int wrong;
    int missed;
    final List<String> negationErrors = new ArrayList<>();
    final List<String> sideErrors = new ArrayList<>();
    final List<String> notes = new ArrayList<>();

    double precision() {
      return right + wrong == 0 ? 1 : (double) right / (right + wrong);
    }

    double recall() {
      return (double) right / (right + missed);
    }

    double f1() {
      double p = precision();
      double r = recall();
      return p + r == 0 ? 0 : 2 * p * r / (p + r);
    }

    @Override
    public String toString() {
      return "precision %.3f recall %.3f F1 %.3f (%d right, %d wrong, %d missed; negation errors %d, side errors %d)"
          .formatted(
              precision(),
              recall(),
              f1(),
              right,
              wrong,
              missed,
              negationErrors.size(),
              sideErrors.size());
    }
  }

  private NaturalSentences() {}

  static List<Row> read(String author) throws IOException {
    List<Row> rows = new ArrayList<>();
    for (String line : Files.readAllLines(FOLDER.resolve(author + ".txt"))) {
      if (!line.isBlank() && !line.startsWith("#")) {
        String[] sides = line.split("=>");
        rows.add(new Row(sides[0].strip(), expected(sides[1].strip())));
      }
    }
    return rows;
  }

  /** What a table says a sentence states: step and side to the values or numbers. */
  public static Map<String, List<String>> expected(String text) {
    Map<String, List<String>> expected = new TreeMap<>();
    if (!text.equals("-")) {
      for (String item : text.split(";")) {
        String[] words = item.strip().split(" ");
        String step = words[0].replaceAll("\\..*", "");
        if (words[0].endsWith(".both")) {
          List.of("left", "right").forEach(side -> add(expected, step + "." + side, words[1]));
        } else {
          add(expected, words[0], words[1]);
        }
      }
    }
    return expected;
  }

  private static void add(Map<String, List<String>> map, String key, String value) {
    map.computeIfAbsent(key, k -> new ArrayList<>()).add(value);
  }

  static Score score(List<Row> rows, Interpreter interpreter, TypedText typed) {
    Score score = new Score();
    for (Row row : rows) {
      Map<String, List<String>> found = new TreeMap<>();
      for (String sentence : TypedText.sentences(row.text())) {
        interpreter
            .interpret(typed.utterance(sentence), Dialogue.START, Source.GRAMMAR)
            .statements()
            .forEach(statement -> add(found, key(statement), value(statement)));
      }
      compare(row, found, score);
    }
    return score;
  }

  /** Step and side of a statement as the tables have them. */
  public static String key(Finding statement) {
    Step step = Protocol.standard().step(statement.step());
    boolean ofSides = step.sided() || step.values().stream().anyMatch(tiptoe.protocol.Value::sided);
    return statement.step()
        + (statement.side() == null || !ofSides ? "" : "." + statement.side().id());
  }

  /** Value or number of a statement as the tables have it. */
  public static String value(Finding statement) {
    return statement.quantity() == null ? statement.value() : statement.quantity().text();
  }

  private static void compare(Row row, Map<String, List<String>> found, Score score) {
    for (Map.Entry<String, List<String>> entry : row.expected().entrySet()) {
      for (String value : entry.getValue()) {
        if (found.getOrDefault(entry.getKey(), List.of()).stream().anyMatch(v -> same(v, value))) {
          score.right++;
        } else {
          score.missed++;
          score.notes.add("missed " + entry.getKey() + " " + value + " in: " + row.text());
        }
      }
    }
    for (Map.Entry<String, List<String>> entry : found.entrySet()) {
      for (String value : entry.getValue().stream().distinct().toList()) {
        List<String> wanted = row.expected().getOrDefault(entry.getKey(), List.of());
        if (wanted.stream().noneMatch(v -> same(v, value))) {
          score.wrong++;
          score.notes.add("wrong " + entry.getKey() + " " + value + " in: " + row.text());
          classify(row, entry.getKey(), value, score);
        }
      }
    }
  }

  // The step was stated, but with a value that turns it round, or on the other side.
  private static void classify(Row row, String key, String value, Score score) {
    if (row.expected().containsKey(key)) {
      if (row.expected().get(key).stream().anyMatch(wanted -> turned(key, wanted, value))) {
        score.negationErrors.add(row.text());
      }
    } else if (key.contains(".")) {
      String step = key.replaceAll("\\..*", "");
      boolean other = row.expected().keySet().stream().anyMatch(k -> k.startsWith(step + "."));
      if (other) {
        score.sideErrors.add(row.text());
      }
    }
  }

  private static boolean turned(String key, String wanted, String found) {
    Step step = Protocol.standard().step(key.replaceAll("\\..*", ""));
    return !step.isMeasured() && isNormal(step, wanted) != isNormal(step, found);
  }

  private static boolean isNormal(Step step, String value) {
    return step.value(value).orElseThrow().norm() == tiptoe.protocol.Norm.NORMAL;
  }

  /** Whether two values, or two numbers up to rounding, are the same. */
  public static boolean same(String one, String other) {
    if (one.matches("-?[0-9.]+") && other.matches("-?[0-9.]+")) {
      double wanted = Double.parseDouble(other);
      return Math.abs(Double.parseDouble(one) - wanted) <= Math.max(0.05, 0.0005 * wanted);
    }
    return one.equals(other);
  }
}
