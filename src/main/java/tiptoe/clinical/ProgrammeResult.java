package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Slot;
import tiptoe.protocol.Step;

/**
 * What the check comes to for one of the four parts that screening programmes report: eyes, heart,
 * hips and testes (NHS England, NIPE screening programme handbook, 2024). It follows from the flags
 * and from what is missing, and says nothing that they do not say.
 *
 * @param part {@code eyes}, {@code heart}, {@code hips} or {@code testes}
 * @param outcome the gravest that holds
 * @param flags what it is referred for, the most pressing first
 * @param owed key steps of the part that nobody has answered
 */
public record ProgrammeResult(String part, Outcome outcome, List<Flag> flags, List<Slot> owed) {
  /** What a part comes to. */
  public enum Outcome {
    /** All key steps were answered and nothing is to be arranged. */
    NO_CONCERN,
    /** Something is to be arranged or acted on, as its flags say. */
    REFERRAL,
    /** A key step was not answered, so the part is owed. */
    NOT_DONE,
    /** It does not apply to this baby, or the sex was not stated. */
    NOT_APPLICABLE
  }

  private static final List<Part> PARTS =
      List.of(
          new Part("eyes", List.of("red-reflex", "eyes")),
          new Part(
              "heart",
              List.of(
                  "murmur",
                  "heart-sounds",
                  "rhythm",
                  "precordium",
                  "femoral-pulse",
                  "brachial-pulse",
                  "saturation-right-hand",
                  "saturation-foot")),
          new Part("hips", List.of("barlow", "ortolani")),
          new Part("testes", List.of("testis")));

  private record Part(String id, List<String> steps) {}

  public ProgrammeResult {
    flags = List.copyOf(flags);
    owed = List.copyOf(owed);
  }

  /** The results of all four parts, in their order. */
  public static List<ProgrammeResult> of(ExamRecord record, Assessment assessment) {
    return PARTS.stream().map(part -> of(part, record, assessment)).toList();
  }

  private static ProgrammeResult of(Part part, ExamRecord record, Assessment assessment) {
    List<Flag> flags =
        assessment.flags().stream()
            .filter(flag -> flag.level().compareTo(Level.ARRANGE) <= 0)
            .filter(flag -> isAbout(flag, part))
            .toList();
    List<Slot> owed =
        record.missingKeySteps().stream()
            .filter(slot -> part.steps().contains(slot.step()))
            .toList();
    String sex = record.baby().sex().orElse(null);
    boolean applies =
        steps(part, record).stream()
            .anyMatch(step -> step.sex() == null || sex != null && step.appliesTo(sex));
    Outcome outcome =
        !flags.isEmpty()
            ? Outcome.REFERRAL
            : !applies
                ? Outcome.NOT_APPLICABLE
                : owed.isEmpty() ? Outcome.NO_CONCERN : Outcome.NOT_DONE;
    return new ProgrammeResult(part.id(), outcome, flags, owed);
  }

  private static List<Step> steps(Part part, ExamRecord record) {
    List<Step> steps = new ArrayList<>();
    part.steps().forEach(id -> record.protocol().find(id).ifPresent(steps::add));
    return steps;
  }

  // Flags that rest on the history alone name the steps they are about, or belong by their rule.
  private static boolean isAbout(Flag flag, Part part) {
    return Stream.concat(flag.steps().stream(), Stream.of(flag.rule()))
        .anyMatch(
            id ->
                part.steps().contains(id)
                    || part.id().equals("hips") && id.startsWith("hip-risk")
                    || part.id().equals("eyes") && id.startsWith("eye-family"));
  }
}
