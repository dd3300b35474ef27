package tiptoe.language;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Locale;
import tiptoe.files.Shipped;

/**
 * From which probability on a sentence that sounds like talk states less, or nothing; the numbers
 * in use are in {@code talk.yaml}.
 *
 * @param unaskedFrom from here on nothing is asked about it, 0 to 1
 * @param offeredFrom from here on what it seems to state is only offered; not below the first
 * @param silentFrom from here on it states, asks and does nothing; not below the other
 */
public record TalkLimits(
    @JsonProperty("unasked-from") double unaskedFrom,
    @JsonProperty("offered-from") double offeredFrom,
    @JsonProperty("silent-from") double silentFrom) {

  public TalkLimits {
    if (!(unaskedFrom <= offeredFrom)) {
      throw new IllegalArgumentException(
          "expected unasked-from of at most %s, found %s".formatted(offeredFrom, unaskedFrom));
    }
    if (!(offeredFrom <= silentFrom)) {
      throw new IllegalArgumentException(
          "expected offered-from of at most %s, found %s".formatted(silentFrom, offeredFrom));
    }
  }

  public static TalkLimits shipped() {
    return Shipped.yaml(TalkLimits.class, "talk.yaml", TalkLimits.class);
  }

  /**
   * What is left of a reading.
   *
   * @param talk the probability that the sentence is talk
   * @param before the dialogue before it, which talk leaves as it was
   */
  Interpretation weigh(Interpretation read, double talk, Dialogue before) {
    if (talk < unaskedFrom) {
      return read;
    }
    if (talk < offeredFrom) {
      return unasked(read);
    }
    if (silences(talk)) {
      return new Interpretation(
          List.of(), read.uncovered(), read.spans(), false, before, List.of(), talk);
    }
    String why = String.format(Locale.ROOT, "sounds like talk: %.2f", talk);
    List<Interpretation.Certainty> offered =
        read.howSure().stream()
            .filter(
                one ->
                    one.meaning() instanceof Meaning.States
                        || one.meaning() instanceof Meaning.Fact)
            .map(one -> one.sure() ? new Interpretation.Certainty(one.meaning(), false, why) : one)
            .toList();
    return new Interpretation(
        offered.stream().map(Interpretation.Certainty::meaning).toList(),
        read.uncovered(),
        read.spans(),
        read.withheld(),
        read.dialogue(),
        offered,
        talk);
  }

  private static Interpretation unasked(Interpretation read) {
    return read.questions().isEmpty()
        ? read
        : new Interpretation(
            read.meanings().stream().filter(one -> !(one instanceof Meaning.Asks)).toList(),
            read.uncovered(),
            read.spans(),
            read.withheld(),
            read.dialogue(),
            read.certainties().stream()
                .filter(one -> !(one.meaning() instanceof Meaning.Asks))
                .toList());
  }

  /** Whether what is talk by this probability states nothing. */
  boolean silences(double talk) {
    return talk >= silentFrom;
  }
}
