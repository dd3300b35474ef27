package tiptoe.grammar;

import java.util.List;

/**
 * How a sequence of words divides into phrases of the root rule.
 *
 * @param phrases the phrases found, from left to right, none overlapping
 * @param uncovered runs of words that no phrase covers, from left to right
 */
public record Parse(List<Phrase> phrases, List<Span> uncovered) {
  public Parse {
    phrases = List.copyOf(phrases);
    uncovered = List.copyOf(uncovered);
  }

  /**
   * Words {@code from} (inclusive) to {@code to} (exclusive), counted from 0.
   *
   * @param from first word
   * @param to behind the last word; above {@code from}
   */
  public record Span(int from, int to) {}

  /**
   * One phrase of the root rule.
   *
   * @param from first word, from 0
   * @param to behind the last word; above {@code from}
   * @param items its words and tags in the order of the grammar
   * @param cost natural-log penalty of this reading, 0 or more
   */
  public record Phrase(int from, int to, List<Item> items, double cost) {
    public Phrase {
      items = List.copyOf(items);
    }

    /** The tag texts in order. */
    public List<String> tags() {
      return items.stream()
          .filter(TagItem.class::isInstance)
          .map(item -> ((TagItem) item).text())
          .toList();
    }
  }

  /** A word or a tag of a phrase. */
  public sealed interface Item {}

  /**
   * A word.
   *
   * @param index index among the words that were parsed, from 0
   */
  public record WordItem(int index) implements Item {}

  /**
   * A tag.
   *
   * @param text its text, without braces; {@link Tag#parse} takes it apart
   * @param position index of the word it stands in front of, among the words that were parsed
   */
  public record TagItem(String text, int position) implements Item {}
}
