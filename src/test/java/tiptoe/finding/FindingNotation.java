package tiptoe.finding;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Side;

/** Reads findings of the tables of tests, in the one notation there is. */
public final class FindingNotation {
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");
  private static final Pattern TOKEN =
      Pattern.compile("[^\\s\"]*\"(?:[^\"\\\\]|\\\\.)*\"|\\S+", Pattern.DOTALL);

  private FindingNotation() {}

  /**
   * Reads what {@link Finding#toString} writes.
   *
   * @throws IllegalArgumentException when it is not of that form
   */
  public static Finding parse(String text) {
    Deque<String> tokens =
        TOKEN
            .matcher(text)
            .results()
            .map(MatchResult::group)
            .collect(Collectors.toCollection(ArrayDeque::new));
    if (tokens.size() < 2) {
      throw new IllegalArgumentException(
          "expected a finding such as clavicle.left crepitus, found " + text);
    }
    String[] place = tokens.remove().split("\\.", 2);
    Bound bound =
        Stream.of(Bound.values())
            .filter(one -> one.sign().equals(tokens.peek()))
            .findFirst()
            .orElse(null);
    if (bound != null) {
      tokens.remove();
    }
    if (tokens.isEmpty()) {
      throw new IllegalArgumentException("expected a number, found " + text);
    }
    String said = tokens.remove();
    boolean measured = NUMBER.matcher(said).matches();
    boolean unitSaid =
        measured && !tokens.isEmpty() && !tokens.peek().matches("(?s)[!\\[].*|.*=.*");
    String unit = unitSaid ? tokens.remove() : "1";
    Map<String, String> details = new TreeMap<>();
    List<String> denied = new ArrayList<>();
    boolean group = false;
    Source source = Source.GRAMMAR;
    for (String token : tokens) {
      int is = token.indexOf('=');
      if (is > 0) {
        details.put(token.substring(0, is), unquoted(token.substring(is + 1)));
      } else if (token.startsWith("!")) {
        denied.add(token.substring(1));
      } else if (token.equals("[region]")) {
        group = true;
      } else if (token.matches("\\[.*\\]")) {
        String id = token.substring(1, token.length() - 1);
        source = Labels.byId(Source.class, id, "grammar, tagger or typed");
      } else {
        throw new IllegalArgumentException("expected a detail, found " + token + " in " + text);
      }
    }
    if (bound != null && !measured) {
      throw new IllegalArgumentException("expected a number, found " + said + " in " + text);
    }
    return new Finding(
        place[0],
        place.length < 2 ? null : Side.of(place[1]),
        measured ? null : said,
        measured ? new Quantity(Double.parseDouble(said), unit, bound) : null,
        details,
        denied,
        group,
        source);
  }

  private static String unquoted(String text) {
    return text.startsWith("\"")
        ? text.substring(1, text.length() - 1).replaceAll("(?s)\\\\(.)", "$1")
        : text;
  }
}
