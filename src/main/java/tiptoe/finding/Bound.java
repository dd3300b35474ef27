package tiptoe.finding;

import com.fasterxml.jackson.annotation.JsonCreator;
import com.fasterxml.jackson.annotation.JsonValue;
import java.util.stream.Stream;
import tiptoe.protocol.Labels;

/**
 * What was said of a number that was not told exactly: "under two seconds". The signs are those of
 * {@code Quantity.comparator} in FHIR R4.
 */
public enum Bound {
  UNDER("<", "less than"),
  AT_MOST("<=", "at most"),
  AT_LEAST(">=", "at least"),
  OVER(">", "more than");

  private final String sign;
  private final String words;

  Bound(String sign, String words) {
    this.sign = sign;
    this.words = words;
  }

  @JsonValue
  public String sign() {
    return sign;
  }

  /** As it is said: {@code less than}. */
  public String words() {
    return words;
  }

  @JsonCreator
  public static Bound of(String sign) {
    return Stream.of(values())
        .filter(bound -> bound.sign.equals(sign))
        .findFirst()
        .orElseThrow(() -> new IllegalArgumentException("expected < <= >= or >, found " + sign));
  }

  public static Bound ofId(String id) {
    return Labels.byId(Bound.class, id, "a bound");
  }
}
