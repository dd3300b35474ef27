package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * Something computed from the findings.
 *
 * @param id what was computed: {@code gestation-class}, {@code birth-weight-class}, {@code
 *     maturity}, {@code saturation-screen}, {@code apgar-5}, {@code weight-change}
 * @param value the id or number it came to
 * @param text the same for people
 * @param remarks what must be kept in mind with it
 * @param source what the computation rests on
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Result(String id, String value, String text, List<String> remarks, String source) {
  public Result {
    remarks = List.copyOf(remarks);
  }
}
