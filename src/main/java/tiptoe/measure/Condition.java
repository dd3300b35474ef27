package tiptoe.measure;

import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;

/**
 * How a recording is heard.
 *
 * @param snrDb how far the speech is above the noise, in dB; null in quiet
 * @param stock whether by the model's own run-time grammar, for comparison
 */
public record Condition(Double snrDb, boolean stock) {
  public static final Condition CLEAN = new Condition(null, false);

  /** For people, and in the JSON. */
  public String name() {
    String noise =
        snrDb == null
            ? "clean"
            : (snrDb == Math.rint(snrDb)
                    ? Long.toString(snrDb.longValue())
                    : String.format(Locale.ROOT, "%.1f", snrDb))
                + " dB";
    return stock ? noise + ", stock" : noise;
  }

  /**
   * Quiet, and where noise is to be mixed in, each ratio of speech to it once.
   *
   * @param ratiosDb null for 15, 10 and 5 dB
   */
  public static List<Condition> all(boolean noisy, List<Double> ratiosDb) {
    List<Double> ratios = ratiosDb == null ? List.of(15.0, 10.0, 5.0) : ratiosDb;
    return Stream.concat(
            Stream.of(CLEAN),
            noisy
                ? ratios.stream().distinct().map(ratio -> new Condition(ratio, false))
                : Stream.of())
        .toList();
  }
}
