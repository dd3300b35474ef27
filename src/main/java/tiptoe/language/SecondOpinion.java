package tiptoe.language;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Brings together what the grammars found in an utterance they do not cover and what a second
 * reading says of it. The grammars go first: the second reading adds only what rests on words they
 * leave over, and takes away what it does not find in the whole sentence. Where the two exclude
 * each other, neither is offered.
 */
final class SecondOpinion {
  private final Protocol protocol;
  private final SecondReading.Reading reading;
  private final Set<Integer> uncovered;

  /**
   * @param uncovered indexes of the words that no phrase covers
   */
  SecondOpinion(Protocol protocol, SecondReading.Reading reading, Set<Integer> uncovered) {
    this.protocol = protocol;
    this.reading = reading;
    this.uncovered = uncovered;
  }

  List<Meaning> beside(List<Meaning> first) {
    if (reading.doubtful()) {
      return first.stream().filter(meaning -> !(meaning instanceof Meaning.States)).toList();
    }
    List<Finding> said = new ArrayList<>();
    reading.claims().forEach(claim -> statement(claim).ifPresent(said::add));
    List<Meaning> meanings = new ArrayList<>();
    for (Meaning meaning : first) {
      if (!(meaning instanceof Meaning.States finding)) {
        meanings.add(meaning);
      } else if (isConfirmed(finding.statement(), said)) {
        meanings.add(new Meaning.States(placed(finding.statement(), said), finding.correction()));
      }
    }
    for (SecondReading.Claim claim : reading.claims()) {
      // "Clunk on the left, Ortolani positive": phrases know no side of it.
      boolean unsaid = findings(first).noneMatch(other -> other.step().equals(claim.step()));
      if (unsaid || claim.evidence().stream().anyMatch(uncovered::contains)) {
        statement(claim)
            .filter(statement -> isNew(statement, meanings) && !isContested(statement, first))
            .ifPresent(statement -> meanings.add(new Meaning.States(statement, false)));
      }
    }
    return meanings;
  }

  /**
   * What a claim states whose every word is accounted for; the grammars tell the details.
   *
   * @param source how the statements are said to be understood
   */
  List<Meaning> alone(SecondReading.Claim claim, List<Meaning> first, Source source) {
    Finding read = finding(claim).withSource(source);
    if (claim.value() == null
        && !Measurement.of(claim.numbers(), protocol.step(claim.step()).measure()).plausible()) {
      return List.of(new Meaning.Asks(Question.number(read), false));
    }
    Finding detailed =
        findings(first)
            .filter(said -> said.step().equals(read.step()) && overlap(said, read))
            .filter(said -> Objects.equals(said.value(), read.value()))
            .findFirst()
            .map(said -> placed(read.withDetails(said.details()), said.side(), claim))
            .orElse(read);
    return new ClauseReader(protocol, source).complete(detailed, false);
  }

  // "Left facial palsy" is one term to the words, and "a sticky left eye" parts them; to the
  // grammars both have a side.
  private Finding placed(Finding read, Side side, SecondReading.Claim claim) {
    boolean ofStep =
        !protocol.step(read.step()).sided()
            || isAmong(claim)
            || reading.claims().stream()
                .anyMatch(other -> other.step().equals(read.step()) && other.side() == side);
    return read.side() == null && side != null && ofStep ? read.withSide(side) : read;
  }

  private boolean isAmong(SecondReading.Claim claim) {
    int from = Collections.min(claim.evidence());
    int to = Collections.max(claim.evidence());
    return reading.spans().stream()
        .filter(span -> span.from() > from && span.to() <= to)
        .anyMatch(span -> span.label().startsWith("side"));
  }

  /** Whether the grammars found something that excludes the claim. */
  boolean isContradicted(SecondReading.Claim claim, List<Meaning> first) {
    Finding read = finding(claim);
    return findings(first).anyMatch(said -> exclude(said, read));
  }

  private static Stream<Finding> findings(List<Meaning> meanings) {
    return meanings.stream()
        .filter(Meaning.States.class::isInstance)
        .map(meaning -> ((Meaning.States) meaning).statement());
  }

  // A phrase inside a sentence that is more than phrases may have lost the words that turn it
  // round, so it is offered only where the reading of the whole sentence agrees. What was
  // left out is read by the grammars alone.
  private boolean isConfirmed(Finding statement, List<Finding> said) {
    boolean heard = !Value.NOT_EXAMINED.equals(statement.value());
    boolean agreed =
        said.stream()
            .filter(other -> other.step().equals(statement.step()) && overlap(other, statement))
            .anyMatch(
                other ->
                    Objects.equals(other.value(), statement.value())
                        && Objects.equals(other.quantity(), statement.quantity()));
    return (!heard || agreed) && said.stream().noneMatch(other -> exclude(statement, other));
  }

  // "Facial palsy" by the grammar, "on the left" by the words behind it.
  private Finding placed(Finding statement, List<Finding> said) {
    List<Finding> same =
        said.stream()
            .filter(other -> statement.side() == null && other.side() != null)
            .filter(other -> other.step().equals(statement.step()))
            .filter(other -> Objects.equals(other.value(), statement.value()))
            .toList();
    return same.size() == 1
        ? statement.withSide(same.get(0).side()).withSource(Source.TAGGER)
        : statement;
  }

  private Optional<Finding> statement(SecondReading.Claim claim) {
    Step step = protocol.step(claim.step());
    boolean lacksSide = step.sided() && claim.side() == null;
    boolean implausible =
        claim.value() == null && !Measurement.of(claim.numbers(), step.measure()).plausible();
    return lacksSide || implausible ? Optional.empty() : Optional.of(finding(claim));
  }

  private Finding finding(SecondReading.Claim claim) {
    if (claim.value() != null) {
      return new Finding(
          claim.step(),
          claim.side(),
          claim.value(),
          null,
          Map.of(),
          claim.denied(),
          false,
          Source.TAGGER);
    }
    Measure measure = protocol.step(claim.step()).measure();
    Measurement said = Measurement.of(claim.numbers(), measure);
    Quantity quantity = new Quantity(said.number(), measure.unit(), said.bound());
    return Finding.of(claim.step(), quantity).withSource(Source.TAGGER);
  }

  private boolean isNew(Finding statement, List<Meaning> first) {
    return first.stream()
        .filter(Meaning.States.class::isInstance)
        .map(meaning -> ((Meaning.States) meaning).statement())
        .filter(other -> other.step().equals(statement.step()) && overlap(other, statement))
        .noneMatch(other -> Objects.equals(other.value(), statement.value()));
  }

  // What stands only against a normal value where several values may stand goes before it: "pink,
  // with a bit of blueness of the hands".
  private boolean isContested(Finding statement, List<Meaning> first) {
    Step step = protocol.step(statement.step());
    boolean added = step.many() && !isNormal(step, statement);
    return !added
        && first.stream()
            .filter(Meaning.States.class::isInstance)
            .map(meaning -> ((Meaning.States) meaning).statement())
            .anyMatch(other -> exclude(other, statement));
  }

  private boolean exclude(Finding one, Finding other) {
    if (!one.step().equals(other.step()) || !overlap(one, other)) {
      return false;
    }
    if (one.value() == null || other.value() == null) {
      return !Objects.equals(one.quantity(), other.quantity());
    }
    if (one.value().equals(other.value())) {
      return false;
    }
    return !protocol.step(one.step()).allows(one.value(), other.value());
  }

  private static boolean isNormal(Step step, Finding statement) {
    return statement.value() != null
        && step.value(statement.value()).map(value -> value.norm() == Norm.NORMAL).orElse(true);
  }

  private static boolean overlap(Finding one, Finding other) {
    Side first = one.side();
    return first == null || other.side() == null || first == other.side();
  }
}
