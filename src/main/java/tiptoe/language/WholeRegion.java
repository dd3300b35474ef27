package tiptoe.language;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Source;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;

/** What one word said of a whole region states step by step. */
final class WholeRegion {
  private WholeRegion() {}

  /** "Eyes normal": every step but those that must be stated for themselves. */
  static Stream<Finding> normal(Region region, Source source) {
    return region.steps().stream()
        .filter(step -> !step.key() && !step.isMeasured() && !step.optional())
        .flatMap(step -> sidesOf(step).map(side -> normal(step, side, source)));
  }

  private static Finding normal(Step step, Side side, Source source) {
    return new Finding(
        step.id(), side, step.normal().orElseThrow().id(), null, Map.of(), List.of(), true, source);
  }

  /** "Hips not examined, in a cast": every step, with the reason in the clause. */
  static Stream<Finding> notExamined(Region region, Clause clause, ClauseReader findings) {
    return region.steps().stream()
        .flatMap(step -> sidesOf(step).map(side -> findings.notExamined(step, side, clause)));
  }

  // Not Stream.of, which takes no null.
  private static Stream<Side> sidesOf(Step step) {
    return step.sided() ? Stream.of(Side.LEFT, Side.RIGHT) : Arrays.stream(new Side[] {null});
  }
}
