package tiptoe.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.util.List;
import tiptoe.language.SecondReading.Span;

/**
 * What the words of a sentence were taken for.
 *
 * @param words the words as the grammars spell them
 * @param spans empty where the grammars cover all words
 */
record Explanation(List<String> words, List<Span> spans) {

  String text() {
    StringBuilder text = new StringBuilder();
    for (Span span : spans) {
      text.append("    %-9s  %s%n".formatted(span.label(), words(span)));
    }
    return text.toString();
  }

  ArrayNode json() {
    ArrayNode array = JsonNodeFactory.instance.arrayNode();
    for (Span span : spans) {
      array.addObject().put("label", span.label()).put("words", words(span));
    }
    return array;
  }

  private String words(Span span) {
    return String.join(" ", words.subList(span.from(), span.to()));
  }
}
