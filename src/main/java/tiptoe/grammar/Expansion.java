package tiptoe.grammar;

import java.util.List;

/**
 * The right-hand side of a rule (SRGS 1.0, section 2). Language attachments are read but not kept:
 * there is one acoustic model.
 */
public sealed interface Expansion {

  /**
   * Words said one after the other (section 2.1); a quoted token of several words is split at its
   * spaces, since the decoder knows words, not tokens.
   *
   * @param words lower case; never empty
   * @param place where the first of them stands
   */
  record Token(List<String> words, Place place) implements Expansion {
    public Token {
      words = List.copyOf(words);
    }
  }

  /**
   * A reference to a rule (section 2.2).
   *
   * @param uri the file as written, or empty for a rule of the same file
   * @param rule the rule name without {@code $}, or empty for the root of {@code uri}
   * @param place where the reference stands
   */
  record RuleReference(String uri, String rule, Place place) implements Expansion {
    @Override
    public String toString() {
      if (uri.isEmpty()) {
        return "$" + rule;
      }
      return rule.isEmpty() ? "$<" + uri + ">" : "$<" + uri + "#" + rule + ">";
    }
  }

  /** {@code $NULL}: matched without saying anything (section 2.2.3). */
  record Null() implements Expansion {}

  /** {@code $VOID}: never matched (section 2.2.3). */
  record Void() implements Expansion {}

  /** {@code $GARBAGE}: any speech (section 2.2.3); read, but refused by {@link GrammarSet}. */
  record Garbage(Place place) implements Expansion {}

  /** A tag (section 2.6), its text without the braces. */
  record TagText(String text, Place place) implements Expansion {}

  /** One part after the other (section 2.3). */
  record Sequence(List<Expansion> parts) implements Expansion {
    public Sequence {
      parts = List.copyOf(parts);
    }
  }

  /** One of several (section 2.4). */
  record Alternatives(List<Alternative> choices) implements Expansion {
    public Alternatives {
      choices = List.copyOf(choices);
    }

    double totalWeight() {
      return choices.stream().mapToDouble(Alternative::weight).sum();
    }
  }

  /**
   * One alternative.
   *
   * @param weight above 0; 1 where none is written (section 2.4.1)
   */
  record Alternative(double weight, Expansion expansion) {}

  /**
   * A repeated or optional part (section 2.5).
   *
   * @param least fewest times, 0 or more
   * @param most most times, or {@link #UNBOUNDED}
   * @param probability probability of each repetition beyond the fewest (section 2.5.1), 0–1; a
   *     half where none is written, so that going on and stopping have an equal share
   */
  record Repeat(Expansion expansion, int least, int most, double probability) implements Expansion {
    static final int UNBOUNDED = Integer.MAX_VALUE;
    static final double EQUAL_SHARE = 0.5;
  }
}
