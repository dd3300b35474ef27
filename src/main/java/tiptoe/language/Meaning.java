package tiptoe.language;

import java.util.List;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.protocol.Side;

/** One thing an utterance means; an utterance can mean several, in the order they were said. */
public sealed interface Meaning {
  /** What it states, or may state once what it asks is known: then one of these is meant. */
  default List<Finding> findings() {
    return List.of();
  }

  /**
   * A finding that may be recorded.
   *
   * @param correction whether it was said as a correction and replaces what stood before
   */
  record States(Finding statement, boolean correction) implements Meaning {
    @Override
    public List<Finding> findings() {
      return List.of(statement);
    }
  }

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
  record Asks(Question question, boolean correction) implements Meaning {
    @Override
    public List<Finding> findings() {
      return question.waiting();
    }
  }

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
   * @param doubtful whether it is read back first and only a yes records it
   */
  record Fact(String id, String value, boolean correction, boolean doubtful) implements Meaning {
    public Fact(String id, String value, boolean correction) {
      this(id, value, correction, false);
    }

    public Fact(String id, String value) {
      this(id, value, false);
    }
  }

  /** A region was announced; what is said short from here on belongs to it. */
  record Heading(String region) implements Meaning {}

  /**
   * Which of several findings that are offered together are meant: "yes to all", "only the first",
   * "not the mass".
   *
   * @param only whether the named are to be kept and the rest left out; else the other way round.
   *     Where none is named, all are
   * @param places their places, from 1, or -1 for the last; empty where they were named
   * @param steps the steps that a name can mean
   * @param side the side; null where none was said
   */
  record Picks(boolean only, List<Integer> places, List<String> steps, Side side)
      implements Meaning {
    public Picks {
      places = List.copyOf(places);
      steps = List.copyOf(steps);
    }

    /** Whether it takes all that is offered. */
    public boolean all() {
      return only && places.isEmpty() && steps.isEmpty() && side == null;
    }

    /** Whether any of what one part seems to say, at this place, from 1, of so many, is kept. */
    public boolean keeps(Meaning part, int at, int of) {
      if (!places.isEmpty()) {
        return (places.contains(at) || at == of && places.contains(-1)) == only;
      }
      return part.findings().isEmpty()
          ? (steps.isEmpty() && side == null) == only
          : part.findings().stream().anyMatch(said -> names(said) == only);
    }

    private boolean names(Finding said) {
      return (steps.isEmpty() || steps.contains(said.step()))
          && (side == null || side == said.side());
    }
  }

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
