package tiptoe.language.tagger;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.language.SecondReading.Claim;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Makes statements of segments by rule: structure and finding belong to the same step, a side to
 * the nearest structure, a denial to what the grammars too let be denied. What is ambiguous comes
 * to nothing.
 */
final class SegmentReader {
  private final LayLexicon lexicon;
  private final Protocol protocol;
  private final Set<String> deniable;
  private final List<String> words;
  private final List<Claim> claims = new ArrayList<>();
  private Segment before;
  private Set<String> stepsBefore = Set.of();
  private Set<String> partsBefore = Set.of();

  /**
   * @param deniable {@code step value} of every abnormal value that the grammars let be denied
   */
  SegmentReader(LayLexicon lexicon, Protocol protocol, Set<String> deniable, List<String> words) {
    this.lexicon = lexicon;
    this.protocol = protocol;
    this.deniable = deniable;
    this.words = words;
  }

  List<Claim> of(List<Segment> segments) {
    segments.forEach(this::take);
    return claims;
  }

  private void take(Segment segment) {
    Set<String> resolved = new LinkedHashSet<>();
    for (Segment.Found found : segment.findings) {
      List<Sense> senses = resolve(segment, found.match());
      for (Sense sense : senses) {
        resolved.add(sense.step());
        claim(segment, found, sense);
      }
      // "can't feel the left femoral": a denied structure, where "can't feel" is no value of it
      if (senses.isEmpty() && denies(found.match())) {
        segment.denier = found.match().from();
        absent(segment);
      }
    }
    if (segment.findings.isEmpty() && segment.denier >= 0 && segment.deniesPart) {
      absent(segment);
      resolved.addAll(segment.partSteps());
    }
    if (resolved.isEmpty() && !segment.parts.isEmpty()) {
      resolved.addAll(segment.partSteps());
    }
    before = segment;
    partsBefore = segment.parts.isEmpty() ? partsBefore : segment.partSteps();
    stepsBefore = resolved.isEmpty() ? stepsBefore : resolved;
  }

  private boolean denies(TermMatch match) {
    return lexicon.denies(match, words);
  }

  /** The senses a finding has here: one for each structure it is about. */
  private List<Sense> resolve(Segment segment, TermMatch finding) {
    if (segment.parts.isEmpty()) {
      List<Sense> free = finding.senses().stream().filter(sense -> !sense.bound()).toList();
      if (!free.isEmpty()) {
        return oneStep(free);
      }
      List<Sense> same = forEach(stepsBefore, finding);
      return same.isEmpty() ? forEach(partsBefore, finding) : same;
    }
    List<Sense> found = new ArrayList<>();
    for (TermMatch part : segment.parts) {
      List<Sense> here = oneStep(matching(part.steps(Sense.Kind.PART), finding));
      here.stream().filter(sense -> !found.contains(sense)).forEach(found::add);
    }
    if (!found.isEmpty()) {
      return found;
    }
    List<Sense> placed =
        finding.senses().stream()
            .filter(sense -> !sense.bound())
            .filter(
                sense ->
                    lexicon.isAnywhere(sense.step())
                        || segment.parts.stream().allMatch(part -> isNear(part, sense.step())))
            .toList();
    return oneStep(placed);
  }

  private boolean isNear(TermMatch part, String step) {
    String region = protocol.step(step).region();
    return part.steps(Sense.Kind.PLACE).contains(step)
        || part.steps(Sense.Kind.PART).stream()
            .anyMatch(other -> protocol.step(other).region().equals(region));
  }

  private static List<Sense> forEach(Set<String> steps, TermMatch finding) {
    List<Sense> senses = new ArrayList<>();
    for (String step : steps) {
      senses.addAll(oneStep(matching(Set.of(step), finding)));
    }
    return senses;
  }

  private static List<Sense> matching(Set<String> steps, TermMatch finding) {
    return finding.senses().stream().filter(sense -> steps.contains(sense.step())).toList();
  }

  // Several steps or values that the words fit equally well are no statement; words that are bound
  // to their structure lose against those that are not.
  private static List<Sense> oneStep(List<Sense> senses) {
    List<Sense> distinct = distinct(senses);
    if (distinct.size() > 1) {
      distinct = distinct(senses.stream().filter(sense -> !sense.bound()).toList());
    }
    return distinct.size() == 1 ? distinct : List.of();
  }

  private static List<Sense> distinct(List<Sense> senses) {
    List<Sense> distinct = new ArrayList<>();
    for (Sense sense : senses) {
      if (distinct.stream()
          .noneMatch(one -> one.step().equals(sense.step()) && one.value().equals(sense.value()))) {
        distinct.add(sense);
      }
    }
    return distinct;
  }

  private void claim(Segment segment, Segment.Found found, Sense sense) {
    Step step = protocol.step(sense.step());
    Value value = step.value(sense.value()).orElseThrow();
    String stated = value.id();
    List<String> denied = List.of();
    if (found.denied()) {
      Optional<String> opposite = lexicon.opposite(step.id(), value.id());
      boolean abnormal = value.norm() != Norm.NORMAL;
      if (opposite.isPresent()) {
        stated = opposite.get();
      } else if (abnormal && deniable.contains(step.id() + " " + value.id())) {
        stated = step.normal().orElseThrow().id();
        denied = List.of(value.id());
      } else {
        return;
      }
    }
    Set<Integer> evidence = evidence(segment, found);
    if (segment.sides.isEmpty() && saysBoth(found.match())) {
      segment.sides.addAll(List.of(Side.LEFT, Side.RIGHT));
    }
    add(segment, step, stated, denied, evidence);
  }

  // "five fingers on each hand"
  private boolean saysBoth(TermMatch match) {
    return lexicon.says("both", words.subList(match.from(), match.to()));
  }

  private void absent(Segment segment) {
    List<Step> steps =
        segment.partSteps().stream()
            .map(protocol::step)
            .filter(step -> step.value("absent").isPresent())
            .toList();
    if (steps.size() == 1) {
      Set<Integer> evidence = new TreeSet<>(segment.sideWords);
      evidence.add(segment.denier);
      segment.parts.forEach(part -> addWords(part, evidence));
      add(segment, steps.get(0), "absent", List.of(), evidence);
    }
  }

  private void add(
      Segment segment, Step step, String value, List<String> denied, Set<Integer> evidence) {
    boolean normal = step.value(value).orElseThrow().norm() == Norm.NORMAL;
    boolean ofSides = step.value(value).orElseThrow().sided();
    Set<Side> sides = segment.sides;
    if (sides.isEmpty() && segment.parts.isEmpty() && sharesSide(step)) {
      sides = before.sides;
    }
    if (step.sided()) {
      if (sides.isEmpty() && (segment.isPair(step.id()) || isPairBefore(segment, step.id()))) {
        sides = Set.of(Side.LEFT, Side.RIGHT);
      }
      sides.stream()
          .sorted()
          .forEach(side -> claims.add(claim(step, side, value, denied, evidence)));
    } else {
      Side side = ofSides && !normal && sides.size() == 1 ? sides.iterator().next() : null;
      claims.add(claim(step, side, value, denied, evidence));
    }
  }

  private boolean sharesSide(Step step) {
    return before != null && step.sided() && stepsBefore.contains(step.id());
  }

  private boolean isPairBefore(Segment segment, String step) {
    return before != null && segment.parts.isEmpty() && before.isPair(step);
  }

  private static Claim claim(
      Step step, Side side, String value, List<String> denied, Set<Integer> evidence) {
    return new Claim(step.id(), side, value, denied, List.of(), evidence);
  }

  private static Set<Integer> evidence(Segment segment, Segment.Found found) {
    Set<Integer> evidence = new TreeSet<>(segment.sideWords);
    addWords(found.match(), evidence);
    segment.parts.forEach(part -> addWords(part, evidence));
    if (found.denied()) {
      evidence.add(found.denier());
    }
    return evidence;
  }

  private static void addWords(TermMatch match, Set<Integer> words) {
    for (int word = match.from(); word < match.to(); word++) {
      words.add(word);
    }
  }
}
