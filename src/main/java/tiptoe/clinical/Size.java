package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;

/**
 * A measurement of the baby's size with its place among other babies.
 *
 * @param step id of the step
 * @param number the measurement, in {@code unit}
 * @param unit g or cm
 * @param against its place in each standard that applies, the one that classes it first; empty
 *     where none applies, and then a remark says why
 * @param sizeClass the class by the first standard; null where none applies
 * @param remarks what must be kept in mind with it
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record Size(
    String step,
    double number,
    String unit,
    List<Place> against,
    SizeClass sizeClass,
    List<String> remarks) {

  /**
   * The place in one standard.
   *
   * @param standard {@code intergrowth-21st} or {@code who}
   * @param centile in %, 0–100, to 3 decimals
   * @param centileText for people: {@code 25th}, {@code below the 1st}
   * @param z the z-score, to 3 decimals
   * @param source the paper
   */
  public record Place(
      String standard, double centile, String centileText, double z, String source) {
    static Place of(String standard, SizeModel model, double value, String source) {
      Centile centile = model.centile(value);
      return new Place(
          standard,
          rounded(centile.percent()),
          centile.text(),
          rounded(model.zScore(value)),
          source);
    }

    private static double rounded(double number) {
      return Math.rint(number * 1000) / 1000;
    }
  }

  public Size {
    against = List.copyOf(against);
    remarks = List.copyOf(remarks);
  }
}
