package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tiptoe.exam.Answer;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Settings;

/** Whatever else was found, something worse never makes the highest level lower. */
class WorseFindingTest {
  private static final Protocol PROTOCOL = Protocol.standard();

  @Provide
  Arbitrary<List<Answer>> findings() {
    List<Answer> all = new ArrayList<>();
    for (Step step : PROTOCOL.steps().toList()) {
      for (Value value : step.values()) {
        for (Side side : step.sided() ? Side.values() : new Side[] {null}) {
          all.add(new Answer(Finding.of(step.id(), side, value.id()), all.size() + 1));
        }
      }
    }
    return Arbitraries.of(all)
        .list()
        .ofMaxSize(12)
        .uniqueElements(answer -> answer.step() + " " + answer.side());
  }

  /** One to four numbers of different steps, each anywhere in its plausible range. */
  @Provide
  Arbitrary<List<Answer>> numbers() {
    return Combinators.combine(
            Arbitraries.of(PROTOCOL.steps().filter(Step::isMeasured).toList()),
            Arbitraries.integers().between(0, 1000))
        .as((step, part) -> number(step, part / 1000.0))
        .list()
        .ofMinSize(1)
        .ofMaxSize(4)
        .uniqueElements(Answer::step);
  }

  private static Answer number(Step step, double part) {
    double number = step.measure().min() + part * (step.measure().max() - step.measure().min());
    return number(step, 1000 + PROTOCOL.steps().toList().indexOf(step), number);
  }

  private static Answer number(Step step, int statement, double number) {
    double said = step.measure().whole() ? Math.rint(number) : number;
    return new Answer(Finding.of(step.id(), new Quantity(said, step.measure().unit())), statement);
  }

  // All but the last stand; the last comes along. What is normal or benign is not worse.
  @Property
  void anAbnormalFindingNeverLowersTheHighestLevel(
      @ForAll("findings") List<Answer> findings, @ForAll("numbers") List<Answer> numbers) {
    if (findings.isEmpty()) {
      return;
    }
    Answer last = findings.get(findings.size() - 1);
    Norm norm = PROTOCOL.step(last.step()).value(last.value()).map(Value::norm).orElseThrow();
    if (norm != Norm.ABNORMAL) {
      return;
    }
    List<Answer> standing = with(findings.subList(0, findings.size() - 1), numbers);
    notLower(standing, with(standing, List.of(last)));
  }

  // The last number comes along; it is worse where it raises something by itself.
  @Property
  void anUnusualNumberNeverLowersTheHighestLevel(
      @ForAll("findings") List<Answer> findings, @ForAll("numbers") List<Answer> numbers) {
    Answer last = numbers.get(numbers.size() - 1);
    if (assess(List.of(last)).flags().isEmpty()) {
      return;
    }
    List<Answer> standing = with(findings, numbers.subList(0, numbers.size() - 1));
    notLower(standing, with(standing, List.of(last)));
  }

  // A number that is low, lower; one that is high, higher.
  @Property
  void aNumberFurtherOffNeverLowersTheHighestLevel(
      @ForAll("findings") List<Answer> findings,
      @ForAll("numbers") List<Answer> numbers,
      @ForAll double anywhere) {
    double part = Math.abs(anywhere % 1);
    List<Answer> standing = with(findings, numbers);
    Assessment assessment = assess(standing);
    for (Answer number : numbers) {
      Optional<AbnormalNumber> marked = assessment.abnormal(number);
      if (marked.isEmpty() || marked.get().direction() == AbnormalNumber.Direction.ABNORMAL) {
        continue;
      }
      Step step = PROTOCOL.step(number.step());
      double now = number.quantity().number();
      double end =
          marked.get().direction() == AbnormalNumber.Direction.LOW
              ? step.measure().min()
              : step.measure().max();
      Answer further = number(step, number.statement(), now + part * (end - now));
      List<Answer> worse =
          standing.stream().map(answer -> answer.equals(number) ? further : answer).toList();
      notLower(standing, worse);
    }
  }

  private static List<Answer> with(List<Answer> some, List<Answer> more) {
    List<Answer> all = new ArrayList<>(some);
    all.addAll(more);
    return all;
  }

  private static void notLower(List<Answer> before, List<Answer> after) {
    Level was = highest(before);
    Level is = highest(after);
    assertTrue(is.compareTo(was) <= 0, was + " to " + is + ": " + before + " to " + after);
  }

  private static Level highest(List<Answer> findings) {
    return assess(findings).flags().stream().map(Flag::level).findFirst().orElse(Level.NOTE);
  }

  private static Assessment assess(List<Answer> findings) {
    return Assessor.of(Protocol.standard())
        .assess(
            Bedside.baby("age=30 gestation=39+0 sex=boy"), findings, Settings.DEFAULT, Bedside.NOW);
  }
}
