package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * Something computed from the findings.
 *
 * @param id what was computed: {@code gestation-class}, {@code birth-weight-class}, {@code
 *     maturity}, {@code saturation-screen}, {@code apgar-5}, {@code weight-change}, {@code
 *     bilirubin}, {@code glucose}, {@code early-infection}, {@code maturity-signs}
 * @param value the id or number it came to
 * @param text the same for people
 * @param remarks what must be kept in mind with it
 * @param standard id of the standard it was held against; null where there is but one
 * @param number what was measured; null where the value says it
 * @param unit of the numbers
 * @param phototherapy threshold of treatment by light in the same unit; null but for bilirubin
 * @param exchange threshold of an exchange transfusion; null but for bilirubin
 * @param source what the computation rests on
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Result(
    String id,
    String value,
    String text,
    List<String> remarks,
    String standard,
    Double number,
    String unit,
    Double phototherapy,
    Double exchange,
    String source) {
  public Result {
    remarks = List.copyOf(remarks);
  }

  /** A result that needs no numbers beside its value. */
  public Result(String id, String value, String text, List<String> remarks, String source) {
    this(id, value, text, remarks, null, null, null, null, null, source);
  }
}
