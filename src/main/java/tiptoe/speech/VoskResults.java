package tiptoe.speech;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads the JSON that Vosk gives as results. */
final class VoskResults {
  private static final ObjectMapper JSON = new ObjectMapper();

  private VoskResults() {}

  /** The utterance, or empty where only silence was heard. */
  static Optional<Hypothesis> utterance(String json) {
    return utterance(read(json));
  }

  private static Optional<Hypothesis> utterance(JsonNode node) {
    List<Word> words = new ArrayList<>();
    for (JsonNode word : node.path("result")) {
      words.add(
          new Word(
              word.path("word").asText(),
              word.path("start").asDouble(),
              word.path("end").asDouble(),
              word.path("conf").asDouble()));
    }
    return words.isEmpty() ? Optional.empty() : Optional.of(Hypothesis.of(words));
  }

  /**
   * One way to hear a stretch of sound.
   *
   * @param heard its words with their times; empty where it is silent
   * @param cost −ln of its likelihood, not normalised: only differences mean anything
   */
  record Alternative(Optional<Hypothesis> heard, double cost) {
    /** The words of phrases, without filler. */
    String text() {
      return heard.map(Hypothesis::text).orElse("");
    }

    /** The same with {@link Hypothesis#PAUSE} where there is one. */
    String parted() {
      return heard.map(one -> String.join(" ", one.parted())).orElse("");
    }
  }

  /** The ways to hear a stretch, likeliest first, at least one. */
  static List<Alternative> alternatives(String json) {
    List<Alternative> all = new ArrayList<>();
    for (JsonNode way : read(json).path("alternatives")) {
      all.add(new Alternative(utterance(way), -way.path("confidence").asDouble()));
    }
    if (all.isEmpty()) {
      throw new IllegalStateException(
          "expected alternatives from the speech library, found " + json);
    }
    return all;
  }

  static String partial(String json) {
    return read(json).path("partial").asText();
  }

  private static JsonNode read(String json) {
    try {
      return JSON.readTree(json);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException("expected JSON from the speech library, found " + json, e);
    }
  }
}
