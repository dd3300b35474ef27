package tiptoe.clinical;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.util.List;
import tiptoe.exam.Handled;
import tiptoe.exam.Slot;
import tiptoe.protocol.Identified;

/**
 * What the check comes to for one of the four parts that screening programmes report. It follows
 * from the flags, the plan and what is missing, and says nothing that they do not say.
 *
 * @param part {@code eyes}, {@code heart}, {@code hips} or {@code testes}
 * @param outcome the gravest that holds
 * @param referrals what is to be arranged and by when, the most pressing first
 * @param owed key steps of the part that nobody has answered
 */
@JsonInclude(JsonInclude.Include.NON_EMPTY)
public record ProgrammeResult(
    String part, Outcome outcome, List<Referral> referrals, List<Slot> owed) {
  public enum Outcome implements Identified {
    /** All key steps were answered and nothing is to be arranged. */
    NO_CONCERN,
    /** Something is to be arranged or acted on. */
    REFERRAL,
    /** A key step was not answered, so the part is owed. */
    NOT_DONE,
    /** It does not apply to this baby; it does while the sex was not stated. */
    NOT_APPLICABLE;
  }

  /**
   * Something to be arranged for a part.
   *
   * @param rule id of the flag that it is for
   * @param what for people
   * @param due when, in words
   * @param from the first day or moment, as in {@link PlanItem}; null where there is none
   * @param to the last; null where there is none
   * @param source what the deadline rests on
   * @param handled what became of it; null where nothing was said
   * @param provisional whether it rests on readings that are not settled
   */
  @JsonInclude(JsonInclude.Include.NON_EMPTY)
  public record Referral(
      String rule,
      String what,
      String due,
      String from,
      String to,
      String source,
      Handled handled,
      @JsonInclude(JsonInclude.Include.NON_DEFAULT) boolean provisional) {}

  public ProgrammeResult {
    referrals = List.copyOf(referrals);
    owed = List.copyOf(owed);
  }

  /** Whether the part is one that this baby can have. */
  public boolean applies() {
    return outcome != Outcome.NOT_APPLICABLE;
  }
}
