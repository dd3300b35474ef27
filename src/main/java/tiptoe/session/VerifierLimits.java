package tiptoe.session;

import com.fasterxml.jackson.annotation.JsonProperty;
import tiptoe.files.Shipped;

/**
 * Where the evidence of a second hearing divides accepted, unsure and ignored utterances; the
 * numbers in use are in {@code verifier.yaml}.
 *
 * @param acceptedFrom least support of an accepted utterance that is short, or was not heard in
 *     free wordings
 * @param contestedFrom the same where it was, and they do not fit better; not above the other
 * @param unsureFrom least support of an unsure one, not above the first
 * @param rivalWithin how much less likely other words may be and still count as a rival
 * @param freeFrom least support a second of free wordings that count; below it, what would be
 *     unsure is taken for other speech
 * @param freeFiller largest share of the time of free wordings that no word fits, 0 to 1
 * @param freeWords fewest words of them
 * @param freeSeconds shortest utterance, in s, of which they count for themselves; others are short
 * @param freeBetterBy by how much more support free wordings put phrases in doubt
 */
public record VerifierLimits(
    @JsonProperty("accepted-from") double acceptedFrom,
    @JsonProperty("contested-from") double contestedFrom,
    @JsonProperty("unsure-from") double unsureFrom,
    @JsonProperty("rival-within") double rivalWithin,
    @JsonProperty("free-from") double freeFrom,
    @JsonProperty("free-filler") double freeFiller,
    @JsonProperty("free-words") int freeWords,
    @JsonProperty("free-seconds") double freeSeconds,
    @JsonProperty("free-better-by") double freeBetterBy) {

  public VerifierLimits {
    atMost("contested-from", acceptedFrom, contestedFrom);
    atMost("unsure-from", acceptedFrom, unsureFrom);
  }

  private static void atMost(String name, double most, double found) {
    if (!(found <= most)) {
      throw new IllegalArgumentException(
          "expected %s of at most %s, found %s".formatted(name, most, found));
    }
  }

  static VerifierLimits shipped() {
    return Shipped.yaml(VerifierLimits.class, "verifier.yaml", VerifierLimits.class);
  }
}
