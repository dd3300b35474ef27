package tiptoe.speech;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;

/**
 * Where the evidence of a second hearing divides accepted, unsure and ignored utterances; the
 * numbers in use are in {@code rejection.yaml}.
 *
 * @param acceptedFrom least support of an accepted utterance
 * @param unsureFrom least support of an unsure one, not above the other
 * @param rivalWithin how much less likely other words may be and still count as a rival
 * @param freeFrom least support a second of free wordings that count; below it, what would be
 *     unsure is taken for other speech
 * @param freeFiller largest share of the time of free wordings that no word fits, 0 to 1
 * @param freeWords fewest words of them
 * @param freeBetterBy by how much more support free wordings put phrases in doubt
 */
record RejectionLimits(
    @JsonProperty("accepted-from") double acceptedFrom,
    @JsonProperty("unsure-from") double unsureFrom,
    @JsonProperty("rival-within") double rivalWithin,
    @JsonProperty("free-from") double freeFrom,
    @JsonProperty("free-filler") double freeFiller,
    @JsonProperty("free-words") int freeWords,
    @JsonProperty("free-better-by") double freeBetterBy) {
  private static final String SHIPPED = "rejection.yaml";
  private static final ObjectMapper YAML =
      new ObjectMapper(new YAMLFactory())
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES);

  RejectionLimits {
    if (!(unsureFrom <= acceptedFrom)) {
      throw new IllegalArgumentException(
          "expected unsure-from of at most %s, found %s".formatted(acceptedFrom, unsureFrom));
    }
  }

  static RejectionLimits shipped() {
    try (InputStream in = RejectionLimits.class.getResourceAsStream(SHIPPED)) {
      return YAML.readValue(in, RejectionLimits.class);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
