package tiptoe.language.tagger;

import java.util.Optional;
import java.util.Set;
import java.util.function.ToDoubleBiFunction;
import tiptoe.language.SecondReading.Claim;
import tiptoe.language.SecondReading.Verdict;
import tiptoe.language.SecondReading.Weighed;
import tiptoe.protocol.Step;

/**
 * Says of each claim of a sentence what becomes of it: by the rules that offer it, by the words
 * beside it, and by how likely it was meant.
 */
final class Weighing {
  private final Claimed claimed;
  private final Surroundings around;
  private final Bystanders bystanders;
  private final ToDoubleBiFunction<Claim, Set<String>> likelihood;
  private final Likelihood.Limits limits;

  /**
   * @param likelihood how likely a claim with such features was meant, 0 to 1
   * @param limits from which likelihood on it is recorded or offered
   */
  Weighing(
      Claimed claimed,
      ToDoubleBiFunction<Claim, Set<String>> likelihood,
      Likelihood.Limits limits) {
    this.claimed = claimed;
    this.around = new Surroundings(claimed);
    this.bystanders = new Bystanders(claimed);
    this.likelihood = likelihood;
    this.limits = limits;
  }

  /** How the rules leave a claim. */
  enum Rule {
    /** They offer it. */
    OFFERED,
    /** They let it go. */
    HELD,
    /** They let the whole sentence go, as a doubt, a plan or about somebody else. */
    DOUBTFUL
  }

  /**
   * What becomes of a claim; none where it is not even offered.
   *
   * @param reach the words that may change it
   * @param doubting words that are known to make a doubt of it, wherever they stand
   * @param reported whether somebody else says so
   */
  Optional<Weighed> of(
      Claim claim, Set<Integer> reach, Set<Integer> doubting, Rule rule, boolean reported) {
    Set<String> features = around.of(claim, reach);
    features.add(name(rule, reach));
    boolean offered = rule == Rule.OFFERED;
    boolean alone = bystanders.leaveAlone(claim, reach, doubting, !offered);
    // No weight rests on it: LikelihoodFit tells by it what may be recorded.
    if (alone) {
      features.add("alone");
    }
    double chance = likelihood.applyAsDouble(claim, features);
    return !offered && (bystanders.doubt(claim) || reported)
        ? Optional.empty()
        : verdict(claim, chance, offered, alone).map(how -> new Weighed(claim, reach, chance, how));
  }

  private String name(Rule rule, Set<Integer> reach) {
    return switch (rule) {
      case DOUBTFUL -> "doubtful";
      case HELD -> "held";
      case OFFERED -> reach.stream().noneMatch(claimed.open()::contains) ? "sure" : "offered";
    };
  }

  private Optional<Verdict> verdict(Claim claim, double chance, boolean offered, boolean alone) {
    Step step = claimed.sentence().protocol().step(claim.step());
    if (claim.value() == null || step.sided() && claim.side() == null) {
      return offered ? Optional.of(Verdict.BY_WORDS) : Optional.empty();
    }
    boolean lenient = offered && !(step.key() && claimed.sentence().isNormal(claim));
    if (alone && chance >= (lenient ? limits.recordedOpenFrom() : limits.keyNormalFrom())) {
      return Optional.of(Verdict.LIKELY);
    }
    if (chance < (offered ? limits.offeredFrom() : limits.offeredDoubtfulFrom())) {
      return Optional.empty();
    }
    return Optional.of(
        offered && chance >= limits.recordedFrom() ? Verdict.BY_WORDS : Verdict.UNLIKELY);
  }
}
