package tiptoe.speech;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Reads the JSON that Vosk gives as results. */
final class Results {
  private static final ObjectMapper JSON = new ObjectMapper();

  private Results() {}

  /** The utterance, or empty where only silence was heard. */
  static Optional<Utterance> utterance(String json) {
    List<Word> words = new ArrayList<>();
    for (JsonNode word : read(json).path("result")) {
      words.add(
          new Word(
              word.path("word").asText(),
              word.path("start").asDouble(),
              word.path("end").asDouble(),
              word.path("conf").asDouble()));
    }
    return words.isEmpty() ? Optional.empty() : Optional.of(Utterance.of(words));
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
