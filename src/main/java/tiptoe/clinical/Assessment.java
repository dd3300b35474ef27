package tiptoe.clinical;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.RecordedFinding;

/**
 * Everything that follows from a set of findings.
 *
 * @param flags the most pressing first, then in the order of the rules
 * @param abnormalNumbers the numbers that flags rest on, standing or not settled
 * @param sizes weight, length and head circumference with their centiles
 * @param results screens and classes
 * @param plan what to do later, the soonest first
 * @param programme what the check comes to for eyes, heart, hips and testes
 * @param needs what must be stated about the baby before some rules can judge
 * @param missing steps and details that the findings make necessary
 * @param born when the baby was born, where that was stated and fits the age; else null
 * @param ruleSets the configured rules where sources differ, for people
 * @param caution what the tool is and is not
 */
public record Assessment(
    List<Flag> flags,
    List<AbnormalNumber> abnormalNumbers,
    List<Size> sizes,
    List<Result> results,
    List<PlanItem> plan,
    List<ProgrammeResult> programme,
    List<Need> needs,
    List<MissingItem> missing,
    Instant born,
    List<String> ruleSets,
    String caution) {
  private static final BigDecimal MINUTES_PER_HOUR = new BigDecimal(60);

  public Assessment {
    flags = List.copyOf(flags);
    abnormalNumbers = List.copyOf(abnormalNumbers);
    sizes = List.copyOf(sizes);
    results = List.copyOf(results);
    plan = List.copyOf(plan);
    programme = List.copyOf(programme);
    needs = List.copyOf(needs);
    missing = List.copyOf(missing);
    ruleSets = List.copyOf(ruleSets);
  }

  /** How the number of an answer differs from what is expected; empty where no flag rests on it. */
  public Optional<AbnormalNumber> abnormal(Answer answer) {
    return abnormalNumbers.stream()
        .filter(one -> answer.quantity() != null && one.step().equals(answer.step()))
        .filter(one -> one.statement() == answer.statement())
        .findFirst();
  }

  /**
   * Hours of age at which something was said; empty where the time of birth is not known, and where
   * it was typed in a review, which may be long after it was seen.
   */
  public Optional<BigDecimal> age(RecordedFinding said) {
    if (born == null || said.author() != null || said.at().isBefore(born)) {
      return Optional.empty();
    }
    BigDecimal minutes = BigDecimal.valueOf(Duration.between(born, said.at()).toMinutes());
    return Optional.of(minutes.divide(MINUTES_PER_HOUR, 1, RoundingMode.HALF_UP));
  }

  /** What the findings make necessary beside what the record itself lists as missing. */
  public List<MissingItem> missingBeside(ExamRecord record) {
    return missing.stream().filter(item -> !lists(record, item)).toList();
  }

  private static boolean lists(ExamRecord record, MissingItem item) {
    return item.detail() == null
        ? record.missing().stream().anyMatch(slot -> slot.step().equals(item.step()))
        : record.missingDetails().stream()
            .filter(known -> known.slot().step().equals(item.step()))
            .anyMatch(known -> known.detail().equals(item.detail()));
  }

  /** The result with this id; null where it could not be computed. */
  public Result result(String id) {
    return results.stream().filter(result -> result.id().equals(id)).findFirst().orElse(null);
  }
}
