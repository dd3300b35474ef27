package tiptoe.exam;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import tiptoe.finding.Finding;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;

/** The answers of one step, from the statements that stand for it. */
record StepAnswers(Step step, List<StandingFinding> standing) {

  List<Answer> list() {
    List<Answer> answers = new ArrayList<>();
    if (step.sided()) {
      for (Side side : List.of(Side.RIGHT, Side.LEFT)) {
        answers.addAll(place(standing.stream().filter(one -> one.side() == side).toList()));
      }
    } else {
      answers.addAll(place(standing));
    }
    // A first measurement that was corrected late still comes before its repeats.
    answers.sort(Comparator.comparing(one -> one.details().getOrDefault(Detail.REPEAT, "")));
    return answers;
  }

  /**
   * "No caput" is kept as a normal scalp. Beside another finding of the scalp that would read as if
   * all were normal, so the denial is then shown with the finding.
   */
  private List<Answer> place(List<StandingFinding> here) {
    List<StandingFinding> findings =
        here.stream()
            .filter(one -> !one.notExamined() && one.norm(step) != Norm.NORMAL)
            .filter(one -> one.quantity() == null)
            .toList();
    if (findings.isEmpty()) {
      return here.stream().map(one -> answer(one, one.denied())).toList();
    }
    List<String> alsoDenied =
        here.stream()
            .filter(one -> one.onlyDenies(step))
            .flatMap(one -> one.denied().stream())
            .toList();
    List<Answer> answers = new ArrayList<>();
    for (StandingFinding one : here) {
      if (one.onlyDenies(step)) {
        continue;
      }
      List<String> denied = new ArrayList<>(one.denied());
      if (one == findings.get(0)) {
        alsoDenied.stream().filter(value -> !denied.contains(value)).forEach(denied::add);
      }
      answers.add(answer(one, denied));
    }
    return answers;
  }

  private Answer answer(StandingFinding one, List<String> denied) {
    Finding finding = one.finding().withDetails(details(one)).withDenied(denied);
    return new Answer(finding, one.base().number());
  }

  /** "Symmetric" was said of both sides; it falls when the other side became something else. */
  private Map<String, String> details(StandingFinding one) {
    boolean otherDiffers =
        one.saysSymmetric()
            && standing.stream()
                .anyMatch(other -> other.side() != one.side() && other.norm(step) == Norm.ABNORMAL);
    if (!otherDiffers) {
      return one.details();
    }
    Map<String, String> less = new TreeMap<>(one.details());
    less.remove(StandingFinding.SYMMETRIC);
    return less;
  }
}
