package tiptoe.language;

import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;

/** One thing an utterance means; an utterance can mean several, in the order they were said. */
public sealed interface Meaning {

  /**
   * A finding that may be recorded.
   *
   * @param correction whether it was said as a correction and replaces what stood before
   */
  record States(Finding statement, boolean correction) implements Meaning {}

  /**
   * A finding that was said just before does not hold; what holds instead is among the other
   * meanings.
   *
   * @param finding as it was said, with its side
   */
  record Withdraws(Finding finding) implements Meaning {}

  /**
   * Something that must be answered first, or to complete a finding stated beside it.
   *
   * @param correction whether the finding it is about was said as a correction
   */
  record Asks(Question question, boolean correction) implements Meaning {}

  /**
   * An open question was answered: whatever it yields is among the other meanings.
   *
   * @param question the question that is closed
   */
  record Answers(Question question) implements Meaning {}

  /**
   * A fact about the baby; ids and values as in {@code Baby}.
   *
   * @param correction whether it was said as a correction and replaces what stood before
   */
  record Fact(String id, String value, boolean correction) implements Meaning {
    public Fact(String id, String value) {
      this(id, value, false);
    }
  }

  /** A region was announced; what is said short from here on belongs to it. */
  record Heading(String region) implements Meaning {}

  /**
   * A spoken command.
   *
   * @param doubtful whether it could be talk, so that it is asked about before it is carried out
   */
  record Instruction(Command command, boolean doubtful) implements Meaning {
    public Instruction(Command command) {
      this(command, false);
    }
  }
}
