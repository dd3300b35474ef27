package tiptoe.language;

import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import tiptoe.protocol.Side;

/** Reads utterances that no grammar covers as a whole. What it finds is never more than unsure. */
public interface SecondReading {

  /** Understands nothing: the grammars alone count. */
  SecondReading NONE =
      new SecondReading() {
        @Override
        public Reading read(List<String> words) {
          return new Reading(List.of(), List.of(), false, Set.of(), Set.of());
        }

        @Override
        public double talk(List<String> words) {
          return 0;
        }

        @Override
        public Parted parted(List<String> words) {
          return new Parted(words, false, false);
        }

        @Override
        public Told told(List<String> words) {
          return Told.NOTHING;
        }

        @Override
        public Optional<LeftOut> leftOut(List<String> words) {
          return Optional.empty();
        }

        @Override
        public List<String> headed(List<String> words) {
          return words;
        }

        @Override
        public Set<Integer> asides(List<String> words) {
          return Set.of();
        }
      };

  /**
   * What the words seem to say.
   *
   * @param words lower case, spelled as in the grammars, with {@link TypedText#BREAK} where the
   *     typed text has one; everything that is told back counts the words without breaks
   */
  Reading read(List<String> words);

  /**
   * The probability that the words are talk beside the examination and state nothing of this baby,
   * 0 to 1, as far as that can be told from how they are put.
   *
   * @param words as in {@link #read}
   */
  double talk(List<String> words);

  /**
   * A sentence said in one breath, parted.
   *
   * @param words with {@link TypedText#BREAK} where something is likely to begin anew
   * @param talk whether it is talk of others or of any such thing, so that only facts may be told
   * @param unfamiliar whether words that nobody knows stand in it
   */
  record Parted(List<String> words, boolean talk, boolean unfamiliar) {
    public Parted {
      words = List.copyOf(words);
    }
  }

  /**
   * The words parted; as they are where nothing begins anew, or where a doubt or a plan may reach
   * over all.
   *
   * @param words without {@link TypedText#BREAK}
   */
  Parted parted(List<String> words);

  /**
   * Facts about the baby and measurements in a sentence.
   *
   * @param words as in {@link #read}
   */
  Told told(List<String> words);

  /**
   * What was not examined, where a sentence says so in words that say nothing else.
   *
   * @param words as in {@link #read}
   */
  Optional<LeftOut> leftOut(List<String> words);

  /**
   * The words with a name and what is said of it behind a break put together: "jaundice, none" as
   * "no jaundice"; as many words as before.
   *
   * @param words as in {@link #read}
   */
  List<String> headed(List<String> words);

  /**
   * The indexes of words that are said to somebody in the room and carry nothing, stretches between
   * breaks as a whole: "could you knock that light off".
   *
   * @param words as in {@link #read}, but counted with their breaks
   */
  Set<Integer> asides(List<String> words);

  /**
   * What was not examined.
   *
   * @param omitted the things that were left out
   * @param side the one side that was left out; null for both
   * @param unable whether it could not be done, rather than was not
   * @param reason the words that say why, with {@link TypedText#BREAK}: free talk, in which only
   *     what is not normal is found
   * @param rest the words of what else is said, with {@link TypedText#BREAK}
   */
  record LeftOut(
      List<Omitted> omitted, Side side, boolean unable, List<String> reason, List<String> rest) {
    public LeftOut {
      omitted = List.copyOf(omitted);
      reason = List.copyOf(reason);
      rest = List.copyOf(rest);
    }
  }

  /**
   * A thing that was left out.
   *
   * @param words what it was called; empty where it was named before
   * @param steps ids of the steps that the words name; empty where they may name more than one
   */
  record Omitted(List<String> words, Set<String> steps) {
    public Omitted {
      words = List.copyOf(words);
      steps = Set.copyOf(steps);
    }
  }

  /**
   * What a sentence tells beside findings.
   *
   * @param said in the order they were said
   * @param rest the words of what else is said, with {@link TypedText#BREAK}; empty where that is
   *     nothing
   * @param open words beside what is said that are not accounted for
   * @param contested ids of what two values were told of, so that neither counts
   * @param shared whether the rest holds words of what is said, so that only findings are in it
   */
  record Told(
      List<Said> said,
      List<String> rest,
      List<String> open,
      Set<String> contested,
      boolean shared) {
    /** Nothing told. */
    public static final Told NOTHING = new Told(List.of(), List.of(), List.of(), Set.of(), false);

    public Told {
      said = List.copyOf(said);
      rest = List.copyOf(rest);
      open = List.copyOf(open);
      contested = Set.copyOf(contested);
    }

    /**
     * A fact or a measurement.
     *
     * @param subject id of the fact or the measured step
     * @param value id of the value; null for a number
     * @param numbers major unit first; empty where there is a value
     * @param sure whether every word beside it is accounted for
     */
    public record Said(String subject, String value, List<SpokenNumber> numbers, boolean sure) {
      public Said {
        numbers = List.copyOf(numbers);
      }
    }
  }

  /**
   * What was read.
   *
   * @param weighed statements, in the order they were said
   * @param spans what each stretch of words was taken for
   * @param doubtful whether the sentence is a doubt, a plan, or about someone else, so that nothing
   *     in it is a finding
   * @param unaccounted indexes of the words that the reading does not account for
   * @param fillers indexes of the words that carry nothing
   */
  record Reading(
      List<Weighed> weighed,
      List<Span> spans,
      boolean doubtful,
      Set<Integer> unaccounted,
      Set<Integer> fillers) {
    public Reading {
      unaccounted = Set.copyOf(unaccounted);
      fillers = Set.copyOf(fillers);
      weighed = List.copyOf(weighed);
      spans = List.copyOf(spans);
    }

    /** The statements, in the order they were said. */
    public List<Claim> claims() {
      return weighed.stream().map(Weighed::claim).toList();
    }
  }

  /**
   * A claim and how sure it is.
   *
   * @param scope indexes of the words that may change it
   * @param likelihood that it was meant, 0 to 1
   * @param verdict what that and the rules make of it
   */
  record Weighed(Claim claim, Set<Integer> scope, double likelihood, Verdict verdict) {
    public Weighed {
      scope = Set.copyOf(scope);
    }
  }

  /** What a claim is sure by. */
  enum Verdict {
    /** It is sure, whatever words are left open. */
    LIKELY,
    /** It is sure where all words that may change it are accounted for. */
    BY_WORDS,
    /** It is not sure. */
    UNLIKELY
  }

  /**
   * A statement as it was read, before it is measured against the protocol.
   *
   * @param step id of the step
   * @param side the side; null where none was said or the step has none
   * @param value id of the value; null for a number
   * @param denied ids of abnormal values that were denied
   * @param numbers the numbers said, major unit first; empty where there is a value
   * @param evidence indexes of the words it rests on
   */
  record Claim(
      String step,
      Side side,
      String value,
      List<String> denied,
      List<SpokenNumber> numbers,
      Set<Integer> evidence) {
    public Claim {
      denied = List.copyOf(denied);
      numbers = List.copyOf(numbers);
      evidence = Set.copyOf(evidence);
    }

    /** The first word it rests on. */
    public int first() {
      return Collections.min(evidence);
    }

    /** The last word it rests on. */
    public int last() {
      return Collections.max(evidence);
    }

    /** The same that rests on other words. */
    public Claim with(Set<Integer> others) {
      return new Claim(step, side, value, denied, numbers, others);
    }

    /** Whether another is of the same step and side. */
    public boolean isOfSame(Claim other) {
      return step.equals(other.step) && side == other.side;
    }
  }

  /**
   * A labelled stretch of words.
   *
   * @param label what it is: structure, finding, side, negation, number, unit, severity or place
   * @param from first word, from 0
   * @param to behind the last word
   */
  record Span(String label, int from, int to) {}
}
