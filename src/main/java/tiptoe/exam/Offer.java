package tiptoe.exam;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import tiptoe.finding.BothSides;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;

/**
 * What is offered to be confirmed: what one unsure utterance seems to say, or what several seem to
 * say, read out together.
 *
 * @param parts in the order that they are told
 */
public record Offer(Way way, List<Part> parts) {
  /** So many places are read out together at most: more are not kept in mind. */
  public static final int MOST = 5;

  public Offer {
    parts = List.copyOf(parts);
  }

  /** How it is asked. */
  public enum Way {
    /** For itself, of one utterance: a bare yes takes all of it, a bare no nothing. */
    ALONE,
    /** Several utterances at once: a bare yes, which is said to parents too, takes nothing. */
    TOGETHER,
    /** Beside the question whether to end, which a bare yes or no answers. */
    AT_END
  }

  /**
   * One finding, or findings of which one is meant.
   *
   * @param of the utterance that seems to say it
   */
  public record Part(Utterance of, Meaning meaning) {
    private Optional<Finding> stated() {
      return meaning instanceof Meaning.States said
          ? Optional.of(said.statement())
          : Optional.empty();
    }
  }

  /** What is told, and picked by its place, as one: the same on both sides. */
  public List<List<Part>> places() {
    return together(parts);
  }

  /** The places of parts that are told with others. */
  public static List<List<Part>> together(List<Part> parts) {
    return BothSides.together(parts, Part::stated);
  }

  /** The utterances that its parts are of. */
  public List<Utterance> utterances() {
    return parts.stream().map(Part::of).distinct().toList();
  }

  /** What an answer keeps of it; empty where it answers something else, or names none or all. */
  Optional<List<Part>> kept(Interpretation answer) {
    if (answer.meanings().size() != 1) {
      return Optional.empty();
    }
    Meaning said = answer.meanings().get(0);
    if (said instanceof Meaning.Instruction instruction) {
      boolean yes = instruction.command() == Command.YES;
      boolean no = instruction.command() == Command.NO;
      return yes && way == Way.ALONE || no && way != Way.AT_END
          ? Optional.of(yes ? parts : List.of())
          : Optional.empty();
    }
    return said instanceof Meaning.Picks picks ? kept(picks) : Optional.empty();
  }

  private Optional<List<Part>> kept(Meaning.Picks picks) {
    List<List<Part>> places = places();
    List<Part> kept = new ArrayList<>();
    for (int at = 1; at <= places.size(); at++) {
      for (Part part : places.get(at - 1)) {
        if (picks.keeps(part.meaning(), at, places.size())) {
          kept.add(part);
        }
      }
    }
    boolean namesNone = picks.only() ? kept.isEmpty() : kept.size() == parts.size();
    return namesNone ? Optional.empty() : Optional.of(kept);
  }
}
