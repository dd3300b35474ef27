package tiptoe.measure;

import java.util.Locale;

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
}
