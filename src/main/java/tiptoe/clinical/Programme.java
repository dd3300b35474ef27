package tiptoe.clinical;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.exam.Checklist;
import tiptoe.exam.Slot;
import tiptoe.protocol.Protocol;

/**
 * The four parts that screening programmes report: eyes, heart, hips and testes (NHS England, NIPE
 * screening programme handbook, 2024).
 *
 * @param flags what was raised, settled or not
 * @param plan what is to be done, with its dates
 */
record Programme(Protocol protocol, Rules rules, List<Flag> flags, List<PlanItem> plan) {
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

  private record Part(String id, List<String> steps) {
    // Flags that rest on the history alone name the steps they are about, or belong by their rule.
    boolean has(Flag flag) {
      return Stream.concat(flag.steps().stream(), Stream.of(flag.rule()))
          .anyMatch(
              name ->
                  steps.contains(name)
                      || id.equals("hips") && name.startsWith("hip-risk")
                      || id.equals("eyes") && name.startsWith("eye-family"));
    }
  }

  /** The results of all four parts, in their order. */
  List<ProgrammeResult> results(Baby baby, List<Answer> answers) {
    List<Slot> missing = new Checklist(protocol, baby, answers).missingKeySteps();
    return PARTS.stream().map(part -> result(part, baby, missing)).toList();
  }

  private ProgrammeResult result(Part part, Baby baby, List<Slot> missing) {
    List<ProgrammeResult.Referral> referrals = new ArrayList<>();
    flags.stream()
        .filter(flag -> flag.level().compareTo(Level.ARRANGE) <= 0 && part.has(flag))
        .flatMap(this::referrals)
        .filter(referral -> !referrals.contains(referral))
        .forEach(referrals::add);
    List<Slot> owed = missing.stream().filter(slot -> part.steps().contains(slot.step())).toList();
    ProgrammeResult.Outcome outcome =
        !referrals.isEmpty()
            ? ProgrammeResult.Outcome.REFERRAL
            : !applies(part, baby)
                ? ProgrammeResult.Outcome.NOT_APPLICABLE
                : owed.isEmpty()
                    ? ProgrammeResult.Outcome.NO_CONCERN
                    : ProgrammeResult.Outcome.NOT_DONE;
    return new ProgrammeResult(part.id(), outcome, referrals, owed);
  }

  private boolean applies(Part part, Baby baby) {
    String sex = baby.sex().orElse(null);
    return part.steps().stream()
        .flatMap(id -> protocol.find(id).stream())
        .anyMatch(step -> step.appliesTo(sex));
  }

  // What the plan has of a flag, with its dates; else what the flag itself says.
  private Stream<ProgrammeResult.Referral> referrals(Flag flag) {
    List<PlanItem> items = plan.stream().filter(item -> isFor(item, flag)).toList();
    return flag.provisional() || items.isEmpty()
        ? Stream.of(
            new ProgrammeResult.Referral(
                flag.rule(),
                flag.advice(),
                flag.when(),
                null,
                null,
                flag.source(),
                null,
                flag.provisional()))
        : items.stream()
            .map(
                item ->
                    new ProgrammeResult.Referral(
                        flag.rule(),
                        item.what(),
                        item.due(),
                        item.from(),
                        item.to(),
                        item.source(),
                        item.handled(),
                        false));
  }

  private boolean isFor(PlanItem item, Flag flag) {
    return item.id().equals(flag.rule())
        || rules.plan().stream()
            .filter(rule -> rule.id().equals(item.id()))
            .anyMatch(
                rule ->
                    rule.actsOn().contains(flag.rule()) || rule.follows().contains(flag.rule()));
  }
}
