package tiptoe.language;

import com.fasterxml.jackson.annotation.JsonProperty;
import java.util.List;
import java.util.Locale;
import tiptoe.files.Shipped;
import tiptoe.protocol.Value;

/**
 * From which probability on a sentence that sounds like talk states less, or nothing; the numbers
 * in use are in {@code talk.yaml}.
 *
 * @param unaskedFrom from here on nothing is asked about it, 0 to 1
 * @param findings for what states a finding
 * @param told for what states no finding, but facts about the baby or what was not examined: that
 *     is said in words that talk has too, and hardly ever by talk
 */
public record TalkLimits(
    @JsonProperty("unasked-from") double unaskedFrom,
    @JsonProperty("findings") Kind findings,
    @JsonProperty("told") Kind told) {

  /**
   * The limits of a kind of statement.
   *
   * @param offeredFrom from here on it is only offered, 0 to 1
   * @param silentFrom from here on the sentence states, asks and does nothing; not below the other
   */
  public record Kind(
      @JsonProperty("offered-from") double offeredFrom,
      @JsonProperty("silent-from") double silentFrom) {
    public Kind {
      if (!(offeredFrom <= silentFrom)) {
        throw new IllegalArgumentException(
            "expected offered-from of at most %s, found %s".formatted(silentFrom, offeredFrom));
      }
    }
  }

  public TalkLimits {
    double most = Math.min(findings.offeredFrom, told.offeredFrom);
    if (!(unaskedFrom <= most)) {
      throw new IllegalArgumentException(
          "expected unasked-from of at most %s, found %s".formatted(most, unaskedFrom));
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
    Kind kind = findsNothing(read) ? told : findings;
    if (talk < unaskedFrom) {
      return read;
    }
    if (talk < kind.offeredFrom) {
      return unasked(read);
    }
    if (talk >= kind.silentFrom) {
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

  /** Whether it states something, but no finding. */
  public static boolean findsNothing(Interpretation read) {
    return !read.meanings().isEmpty()
        && read.meanings().stream()
            .allMatch(
                one ->
                    one instanceof Meaning.Fact
                        || one instanceof Meaning.States states
                            && Value.NOT_EXAMINED.equals(states.statement().value()));
  }

  /** Whether what is talk by this probability states nothing, whatever it seems to state. */
  boolean silences(double talk) {
    return talk >= Math.max(findings.silentFrom, told.silentFrom);
  }
}
