package tiptoe.measure;

import static java.util.Collections.frequency;

import java.util.List;
import java.util.function.Predicate;
import java.util.function.ToIntFunction;
import tiptoe.finding.Outcome;

/**
 * What the recordings of one set in one condition add up to. A figure that nothing tells is NaN.
 *
 * @param set name of the folder
 * @param hours length of the sound
 * @param lines how many lines were said
 * @param exact how many of them were heard word for word
 * @param understood how many did what they should and nothing else
 * @param wrong how many did something else, instead or beside
 * @param missed how many did not do all they should, and nothing else
 * @param expected answers that should stand
 * @param found those of them that do
 * @param falseAnswers answers that stand and should not
 * @param accepted utterances that counted, commands included
 * @param commands those that are commands only
 * @param unsure utterances left to the reviewer
 * @param ignored utterances set aside
 * @param busyHours processor time of the threads
 * @param latencies in s, of utterances that a pause ended, in rising order
 */
public record Figures(
    String set,
    Condition condition,
    int files,
    double hours,
    int lines,
    int exact,
    int understood,
    int wrong,
    int missed,
    int expected,
    int found,
    int falseAnswers,
    int accepted,
    int commands,
    int unsure,
    int ignored,
    double busyHours,
    List<Double> latencies) {

  /** Adds up scores, at least one, of one set in one condition. */
  public static Figures of(List<Score> scores) {
    List<TimedUtterance> heard = scores.stream().flatMap(one -> one.heard().stream()).toList();
    return new Figures(
        scores.get(0).set(),
        scores.get(0).condition(),
        scores.size(),
        scores.stream().mapToDouble(Score::seconds).sum() / 3600,
        sum(scores, score -> score.words().size()),
        sum(scores, score -> frequency(score.words(), Alignment.Outcome.RIGHT)),
        sum(scores, score -> frequency(score.meaning(), Alignment.Outcome.RIGHT)),
        sum(scores, score -> frequency(score.meaning(), Alignment.Outcome.WRONG)),
        sum(scores, score -> frequency(score.meaning(), Alignment.Outcome.MISSED)),
        sum(scores, score -> score.expected().size()),
        sum(scores, score -> score.right().size()),
        sum(scores, score -> score.wrong().size()),
        count(heard, TimedUtterance::counts),
        count(heard, one -> one.outcome() == Outcome.COMMAND),
        count(heard, one -> one.outcome() == Outcome.UNSURE),
        count(heard, one -> one.outcome() == Outcome.IGNORED),
        scores.stream().mapToDouble(Score::busySeconds).sum() / 3600,
        heard.stream()
            .filter(TimedUtterance::timed)
            .map(TimedUtterance::latency)
            .sorted()
            .toList());
  }

  private static int sum(List<Score> scores, ToIntFunction<Score> figure) {
    return scores.stream().mapToInt(figure).sum();
  }

  private static int count(List<TimedUtterance> heard, Predicate<TimedUtterance> which) {
    return (int) heard.stream().filter(which).count();
  }

  /** Share of the answers that stand that should; NaN where none stands. */
  public double precision() {
    return share(found, found + falseAnswers);
  }

  /** Share of the answers that should stand that do; NaN where none should. */
  public double recall() {
    return share(found, expected);
  }

  /** The harmonic mean of precision and recall; NaN where no answer is expected or stands. */
  public double f1() {
    return share(2 * found, found + falseAnswers + expected);
  }

  /** So many of the lines, 0–1; NaN where no words are known. */
  public double ofLines(int count) {
    return share(count, lines);
  }

  /** So many in an hour of sound. */
  public double perHour(int count) {
    return count / hours;
  }

  /** Processor time that a second of sound takes, in s. */
  public double realTimeFactor() {
    return busyHours / hours;
  }

  /**
   * The latency that this share of the utterances keeps within, in s: the smallest that was
   * measured for which that holds.
   */
  public double latency(double share) {
    if (latencies.isEmpty()) {
      return Double.NaN;
    }
    int rank = (int) Math.ceil(share * latencies.size());
    return latencies.get(Math.max(1, rank) - 1);
  }

  private static double share(int part, int whole) {
    return whole == 0 ? Double.NaN : (double) part / whole;
  }
}
