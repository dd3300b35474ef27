package tiptoe.graph;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * The decoder's settings, the model folder's {@code conf/model.conf}.
 *
 * <p>A wide beam and many active states cost little in so small a graph and gain words in noise. In
 * a wide lattice beam filler multiplies; {@code max-mem} (bytes) bounds what that takes. An
 * utterance ends 0.36 s after the last word of a phrase, 0.42 or 1 s where it is less likely or not
 * complete, and after 15 s in any case. Sound is decoded 60 ms at a time, which tells an end or a
 * word sooner than the usual 210 ms; what is heard again, 300 ms at a time, which takes half the
 * work: the network's weights are gone through once for all of it.
 */
final class ModelConf {
  /** Frames of 10 ms that a hearing which nobody waits for word by word decodes at once. */
  private static final int AT_ONCE = 30;

  private static final List<String> WIDE =
      List.of(
          "--min-active=200",
          "--max-active=7000",
          "--beam=13.0",
          "--lattice-beam=6.0",
          "--frames-per-chunk=6");

  /** Hears again what nobody waits for word by word. */
  private static final List<String> AGAIN =
      List.of(
          "--min-active=200",
          "--max-active=7000",
          "--beam=13.0",
          "--lattice-beam=6.0",
          "--frames-per-chunk=" + AT_ONCE);

  /** For the loop of phones only the cost of its best path counts, and many are nearly as good. */
  private static final List<String> NARROW =
      List.of(
          "--min-active=200",
          "--max-active=1000",
          "--beam=9.0",
          "--lattice-beam=0.5",
          "--frames-per-chunk=" + AT_ONCE);

  private static final List<String> COMMON =
      List.of(
          "--max-mem=500000",
          "--acoustic-scale=1.0",
          "--frame-subsampling-factor=3",
          "--endpoint.silence-phones=1:2:3:4:5:6:7:8:9:10",
          "--endpoint.rule2.min-trailing-silence=0.36",
          "--endpoint.rule3.min-trailing-silence=0.42",
          "--endpoint.rule4.min-trailing-silence=1.0",
          "--endpoint.rule5.min-utterance-length=15.0");

  private ModelConf() {}

  /** While somebody speaks, over the graph of phrases. */
  static String first() {
    return text(WIDE);
  }

  /** Behind that, over the same graph or that of free wordings. */
  static String again() {
    return text(AGAIN);
  }

  /** The same over the loop of phones. */
  static String phones() {
    return text(NARROW);
  }

  private static String text(List<String> own) {
    return Stream.concat(own.stream(), COMMON.stream()).collect(Collectors.joining("\n", "", "\n"));
  }

  /**
   * The settings of the features, those of the stock model but without dither: random noise of one
   * step of 16 bits, drawn from one generator for the whole process, so that the same sound would
   * be heard otherwise after other sound. Kaldi floors the energy of digital silence without it.
   *
   * @param stock the model's {@code conf/mfcc.conf}; of an option said twice the last counts
   */
  static String features(String stock) {
    return stock.strip() + "\n--dither=0\n";
  }
}
