package tiptoe.finding;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import tiptoe.protocol.Side;

/**
 * One finding as it was said: about one step, on one side.
 *
 * @param step id of the step
 * @param side the side; null where the step or the value has none, or where none was said
 * @param value id of the value; null for a measurement
 * @param quantity the number, in the unit of the step; null where the step has values
 * @param details what was said beside the value: id of the detail to its value, several values
 *     joined by {@code ,}
 * @param denied abnormal values that were denied ("no crepitus"), in the order they were said
 * @param group whether it was said for a whole region ("eyes normal") and not for this step alone
 * @param source how it was understood
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Finding(
    String step,
    Side side,
    String value,
    Quantity quantity,
    Map<String, String> details,
    List<String> denied,
    boolean group,
    Source source) {
  private static final Pattern NUMBER = Pattern.compile("-?\\d+(\\.\\d+)?");
  private static final Pattern TOKEN =
      Pattern.compile("[^\\s\"]*\"(?:[^\"\\\\]|\\\\.)*\"|\\S+", Pattern.DOTALL);
  private static final Pattern BARE = Pattern.compile("[\\p{L}\\p{N},.+-]+");
  private static final String GROUP = "[region]";

  public Finding {
    details = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(details));
    denied = List.copyOf(denied);
    if ((value == null) == (quantity == null)) {
      throw new IllegalArgumentException("expected a value or a quantity for step " + step);
    }
  }

  public static Finding of(String step, Side side, String value) {
    return new Finding(step, side, value, null, Map.of(), List.of(), false, Source.GRAMMAR);
  }

  public static Finding of(String step, Quantity quantity) {
    return new Finding(step, null, null, quantity, Map.of(), List.of(), false, Source.GRAMMAR);
  }

  /** Step, side and value or number alone, as answers are compared and questions put. */
  public Finding bare() {
    return new Finding(step, side, value, quantity, Map.of(), List.of(), false, Source.GRAMMAR);
  }

  public Finding withSide(Side newSide) {
    return new Finding(step, newSide, value, quantity, details, denied, group, source);
  }

  public Finding withDetails(Map<String, String> newDetails) {
    return new Finding(step, side, value, quantity, newDetails, denied, group, source);
  }

  public Finding withSource(Source newSource) {
    return new Finding(step, side, value, quantity, details, denied, group, newSource);
  }

  /**
   * Reads what {@link #toString} writes.
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
    Bound bound = Bound.find(tokens.peek()).orElse(null);
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
      } else if (token.equals(GROUP)) {
        group = true;
      } else if (token.matches("\\[.*\\]")) {
        source = Source.of(token.substring(1, token.length() - 1));
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

  /**
   * The one notation of a finding, in tables, measurements and messages for developers: step and
   * side, value or number, details, {@code !} before what was denied, and in brackets whether it
   * was said of a whole region and how it was understood, unless by the grammars: {@code
   * clavicle.left swelling size="2 cm" !crepitus [tagger]}, {@code capillary-refill < 2 s}.
   */
  @Override
  public String toString() {
    StringBuilder text = new StringBuilder(step);
    if (side != null) {
      text.append('.').append(side.id());
    }
    text.append(' ').append(quantity == null ? value : quantity);
    details.forEach((id, said) -> text.append(' ').append(id).append('=').append(quoted(said)));
    denied.forEach(id -> text.append(" !").append(id));
    text.append(group ? " " + GROUP : "");
    return source == Source.GRAMMAR ? text.toString() : text + " [" + source.id() + "]";
  }

  private static String quoted(String text) {
    return BARE.matcher(text).matches()
        ? text
        : '"' + text.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
  }

  private static String unquoted(String text) {
    return text.startsWith("\"")
        ? text.substring(1, text.length() - 1).replaceAll("(?s)\\\\(.)", "$1")
        : text;
  }
}
