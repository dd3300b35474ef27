package tiptoe.exam;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Decides what a new statement does to those before it. A contradiction is asked about, never
 * resolved silently: the older statement stands until then.
 */
final class Placing {
  private final ExamRecord record;
  private final Integer utterance;

  /**
   * @param utterance number of the utterance that is being taken in; null when there is none.
   *     Statements of one utterance belong together: a correction does not undo its own first half
   */
  Placing(ExamRecord record, Integer utterance) {
    this.record = record;
    this.utterance = utterance;
  }

  Placement of(Finding statement, boolean correction) {
    Step step = record.protocol().step(statement.step());
    if (statement.group()) {
      return group(step, statement);
    }
    List<StandingFinding> standing = standing(step, Status.STANDS);
    return judge(step, statement, correction, standing, standing(step, Status.WAITS));
  }

  /** Judges a statement that waits once more. */
  Placement again(RecordedFinding waiting) {
    Step step = record.protocol().step(waiting.statement().step());
    return judge(step, waiting.statement(), false, standing(step, Status.STANDS), List.of());
  }

  /** Places a reviewer's statement: it stands whatever it contradicts, or confirms. */
  Placement byReviewer(Finding statement) {
    Step step = record.protocol().step(statement.step());
    if (statement.group()) {
      return group(step, statement);
    }
    List<Integer> inTheWay = inTheWay(statement);
    return first(standing(step, Status.STANDS), statement)
        .filter(old -> !conflictingDetails(step, old, statement))
        .filter(old -> inTheWay.equals(List.of(old.base().number())))
        .map(Placement::confirms)
        .orElseGet(() -> Placement.stands(inTheWay));
  }

  /** What cannot stand in the same place beside a statement, or says the same. */
  List<Integer> inTheWay(Finding statement) {
    Step step = record.protocol().step(statement.step());
    return Stream.of(Status.STANDS, Status.WAITS)
        .flatMap(status -> standing(step, status).stream())
        .filter(old -> samePlace(step, old, statement))
        .filter(old -> sameValue(old, statement) || rivals(step, old, statement))
        .map(old -> old.base().number())
        .toList();
  }

  private Placement judge(
      Step step,
      Finding statement,
      boolean correction,
      List<StandingFinding> standing,
      List<StandingFinding> waiting) {
    if (!applies(step) && Value.NOT_EXAMINED.equals(statement.value())) {
      return new Placement(Effect.UNUSED, List.of(), null);
    }
    if (!applies(step)) {
      return first(standing, statement)
          .or(() -> first(waiting, statement))
          .map(Placement::confirms)
          .orElseGet(() -> new Placement(Effect.WAITS, List.of(), null));
    }
    return correction
        ? correction(step, statement, standing, waiting)
        : plain(step, statement, standing, waiting);
  }

  private Placement plain(
      Step step, Finding statement, List<StandingFinding> standing, List<StandingFinding> waiting) {
    List<StandingFinding> rivals =
        standing.stream().filter(old -> rivals(step, old, statement)).toList();
    List<StandingFinding> hard = rivals.stream().filter(old -> !givesWay(old, statement)).toList();
    if (hard.isEmpty()) {
      return first(standing, statement)
          .filter(old -> !rivals.contains(old))
          .map(Placement::confirms)
          .orElseGet(() -> Placement.stands(numbers(rivals)));
    }
    return first(waiting, statement)
        .filter(old -> !conflictingDetails(step, old, statement))
        .map(Placement::confirms)
        .orElseGet(() -> new Placement(Effect.WAITS, numbers(hard), hard.get(0).finding()));
  }

  private Placement correction(
      Step step, Finding statement, List<StandingFinding> standing, List<StandingFinding> waiting) {
    List<StandingFinding> own = standing.stream().filter(this::ofThisUtterance).toList();
    List<StandingFinding> replaced =
        Stream.of(standing, waiting)
            .flatMap(List::stream)
            .filter(old -> !ofThisUtterance(old) && samePlace(step, old, statement))
            .toList();
    Placement beside = plain(step, statement, own, List.of());
    if (beside.effect() != Effect.STANDS) {
      return beside;
    }
    List<Integer> all = new ArrayList<>(numbers(replaced));
    beside.of().stream().filter(number -> !all.contains(number)).forEach(all::add);
    return Placement.stands(all);
  }

  private boolean ofThisUtterance(StandingFinding old) {
    return utterance != null && utterance.equals(old.base().utterance());
  }

  /** "Eyes normal" fills what is not answered, key steps excepted, and contradicts nothing. */
  private Placement group(Step step, Finding statement) {
    boolean leftOut = Value.NOT_EXAMINED.equals(statement.value());
    boolean fills =
        (leftOut || !step.key())
            && (step.sex() == null || record.baby().sex().isPresent() && applies(step))
            && !isAskedAbout(step)
            && Stream.of(Status.STANDS, Status.WAITS)
                .flatMap(status -> standing(step, status).stream())
                .noneMatch(old -> samePlace(step, old, statement));
    return fills ? Placement.stands(List.of()) : new Placement(Effect.UNUSED, List.of(), null);
  }

  private boolean applies(Step step) {
    return step.appliesTo(record.baby().sex().orElse(null));
  }

  private boolean isAskedAbout(Step step) {
    return record.openQuestions().stream()
        .map(Asked::question)
        .anyMatch(asked -> asked.about() != null && asked.about().step().equals(step.id()));
  }

  private List<StandingFinding> standing(Step step, Status status) {
    return StandingFinding.of(
        record.protocol(),
        record.statements().stream()
            .filter(said -> said.statement().step().equals(step.id()))
            .toList(),
        status);
  }

  private static Optional<StandingFinding> first(List<StandingFinding> all, Finding statement) {
    return all.stream().filter(old -> sameValue(old, statement)).findFirst();
  }

  /** The same finding; one of the two may leave the side open where only the value has one. */
  private static boolean sameValue(StandingFinding old, Finding statement) {
    boolean side = old.side() == statement.side() || old.side() == null || statement.side() == null;
    return side
        && sameReading(old, statement)
        && Objects.equals(old.value(), statement.value())
        && Objects.equals(old.quantity(), statement.quantity());
  }

  private static boolean conflictingDetails(Step step, StandingFinding old, Finding statement) {
    return !old.notExamined()
        && StandingFinding.conflictingDetails(step, old.details(), statement.details());
  }

  static boolean samePlace(Step step, StandingFinding old, Finding statement) {
    return sameReading(old, statement) && (!step.sided() || old.side() == statement.side());
  }

  /** A screen that is repeated after an hour stands beside the first, it does not contradict it. */
  private static boolean sameReading(StandingFinding old, Finding statement) {
    return Objects.equals(old.details().get(Detail.REPEAT), statement.details().get(Detail.REPEAT));
  }

  /** Whether both cannot be right. */
  private boolean rivals(Step step, StandingFinding old, Finding statement) {
    if (!samePlace(step, old, statement)) {
      return contradictsAcross(step, old, statement);
    }
    if (sameValue(old, statement)) {
      return conflictingDetails(step, old, statement);
    }
    boolean saidTogether = ofThisUtterance(old);
    return exclude(step, old, statement, saidTogether);
  }

  private boolean contradictsAcross(Step step, StandingFinding old, Finding statement) {
    if (!step.sided() || samePlace(step, old, statement)) {
      return false;
    }
    boolean symmetric = "yes".equals(statement.details().get(StandingFinding.SYMMETRIC));
    return symmetric && isAbnormal(step, old.value())
        || old.saysSymmetric() && isAbnormal(step, statement.value());
  }

  /** What was only said for the region, or not examined, gives way to a finding. */
  private static boolean givesWay(StandingFinding old, Finding statement) {
    boolean finding = !Value.NOT_EXAMINED.equals(statement.value());
    return old.finding().group() || old.notExamined() && finding;
  }

  private static List<Integer> numbers(List<StandingFinding> standing) {
    return standing.stream().map(old -> old.base().number()).toList();
  }

  /** Whether two values of one step, on the same side, exclude each other. */
  static boolean exclude(Step step, StandingFinding old, Finding statement, boolean saidTogether) {
    boolean leftOut = Value.NOT_EXAMINED.equals(statement.value()) || old.notExamined();
    if (leftOut || step.isMeasured()) {
      return true;
    }
    if (old.value().equals(statement.value())) {
      return !step.many() && !saidTogether;
    }
    if (old.denied().contains(statement.value()) || statement.denied().contains(old.value())) {
      return true;
    }
    if (deniesOnly(step, old.denied(), old.onlyDenies(step), statement.value())
        || deniesOnly(step, statement.denied(), isNormal(step, statement.value()), old.value())) {
      return false;
    }
    return !step.allows(old.value(), statement.value());
  }

  /** "No crepitus" says nothing against a swelling. */
  private static boolean deniesOnly(Step step, List<String> denied, boolean normal, String other) {
    return normal && !denied.isEmpty() && !isNormal(step, other);
  }

  private static boolean isNormal(Step step, String value) {
    return step.norm(value) == Norm.NORMAL;
  }

  private static boolean isAbnormal(Step step, String value) {
    return step.norm(value) == Norm.ABNORMAL;
  }
}
