package tiptoe.exam;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tiptoe.finding.Finding;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;

/**
 * Tells which repeat a number of a series is where that was not said: a second saturation is a
 * second screen and contradicts nothing. Numbers said in one utterance, such as hand and foot, are
 * one repeat together; all the same numbers once more are only said again.
 */
final class Series {
  private final Protocol protocol;
  private final List<List<Finding>> groups = new ArrayList<>();
  private final Map<Finding, Finding> numbered = new IdentityHashMap<>();

  /**
   * @param said the findings of one utterance that are no corrections, in order
   */
  Series(Protocol protocol, List<Finding> said) {
    this.protocol = protocol;
    List<Finding> group = new ArrayList<>();
    for (Finding one : said) {
      boolean open = step(one).filter(Step::series).isPresent() && one.quantity() != null;
      boolean begins = group.stream().anyMatch(other -> other.step().equals(one.step()));
      if (!open || begins) {
        group = new ArrayList<>();
      }
      if (open) {
        if (group.isEmpty()) {
          groups.add(group);
        }
        group.add(one);
      }
    }
  }

  private Optional<Step> step(Finding one) {
    return protocol.find(one.step());
  }

  /** The finding with its repeat; itself where it is of no series or the repeat was said. */
  Finding numbered(ExamRecord record, Finding said) {
    if (!numbered.containsKey(said)) {
      groups.stream()
          .filter(group -> group.stream().anyMatch(one -> one == said))
          .forEach(group -> number(record, group));
    }
    return numbered.getOrDefault(said, said);
  }

  private void number(ExamRecord record, List<Finding> group) {
    int measured = 0;
    boolean same = true;
    String last = null;
    for (Finding one : group) {
      List<Answer> before =
          record.answers(one.step()).stream().filter(answer -> answer.quantity() != null).toList();
      measured = Math.max(measured, before.size());
      if (!before.isEmpty()) {
        Answer latest = before.get(before.size() - 1);
        same &= one.quantity().equals(latest.quantity()) && agree(one, latest);
        last = latest.details().getOrDefault(Detail.REPEAT, last);
      }
    }
    for (Finding one : group) {
      List<String> names =
          step(one).flatMap(step -> step.detail(Detail.REPEAT)).orElseThrow().values();
      String next = measured == 0 ? null : names.get(Math.min(measured, names.size()) - 1);
      numbered.put(one, repeat(one, same ? last : next));
    }
  }

  // The same number of another hour was measured again.
  private static boolean agree(Finding one, Answer latest) {
    return one.details().entrySet().stream()
        .filter(detail -> !detail.getKey().equals(Detail.REPEAT))
        .allMatch(
            detail ->
                latest
                    .details()
                    .getOrDefault(detail.getKey(), detail.getValue())
                    .equals(detail.getValue()));
  }

  private static Finding repeat(Finding one, String name) {
    if (name == null || one.details().containsKey(Detail.REPEAT)) {
      return one;
    }
    Map<String, String> details = new HashMap<>(one.details());
    details.put(Detail.REPEAT, name);
    return one.withDetails(details);
  }
}
