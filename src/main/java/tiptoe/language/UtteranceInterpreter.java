package tiptoe.language;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.finding.Source;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;

/**
 * One utterance being understood, phrase by phrase: carries a side to the next finding of the same
 * utterance, follows the region, closes the open question.
 */
final class UtteranceInterpreter {
  private final Protocol protocol;
  private final ClauseReader findings;
  private final FactReader facts;
  private final Source source;
  private final CarriedSide carried;
  private final List<Meaning> meanings = new ArrayList<>();

  private String region;
  private List<Finding> recent;
  private Question open;
  private boolean openIsCorrection;
  private boolean overtaken;
  private final boolean offering;
  private String assumption;

  UtteranceInterpreter(Protocol protocol, Dialogue dialogue, Source source) {
    this.protocol = protocol;
    this.findings = new ClauseReader(protocol, source);
    this.facts = new FactReader(protocol);
    this.source = source;
    this.carried = new CarriedSide(protocol);
    this.region = dialogue.region();
    this.recent = new ArrayList<>(dialogue.recent());
    this.open = dialogue.open();
    this.overtaken = dialogue.overtaken();
    this.offering = dialogue.offering();
  }

  // What rests on an assumption is confirmed like what was read beyond the grammars.
  List<Meaning> meanings() {
    return assumption == null
        ? meanings
        : meanings.stream()
            .map(
                one ->
                    one instanceof Meaning.States said
                        ? new Meaning.States(
                            said.statement().withSource(Source.TAGGER), said.correction())
                        : one)
            .toList();
  }

  Dialogue dialogue() {
    return new Dialogue(region, recent, open);
  }

  /** What the wording takes for granted; null where there is nothing. */
  String assumption() {
    return assumption;
  }

  boolean isAsking() {
    return open != null;
  }

  void take(List<Clause> clauses) {
    boolean correction = clauses.stream().anyMatch(clause -> clause.mark("correction").isPresent());
    List<String> steps = List.of();
    for (Clause clause : clauses) {
      steps = clause.steps.isEmpty() ? steps : clause.steps;
      take(clause, steps, correction);
    }
  }

  private void take(Clause clause, List<String> steps, boolean correction) {
    clause.mark("assumed").ifPresent(assumed -> assumption = assumed.replace('-', ' '));
    facts.of(clause, correction).forEach(this::add);
    if (clause.mark("heading").isPresent()) {
      enter(clause.mark("heading").get());
      meanings.add(new Meaning.Heading(region));
    } else if (clause.mark("command").isPresent()) {
      command(Command.of(clause.mark("command").get()), clause.mark("ask").isPresent());
    } else if (clause.mark("pick").isPresent()) {
      pick(clause);
    } else if (clause.mark("group").isPresent()) {
      wholeRegion(clause.mark("group").get());
    } else if (clause.mark("every").isPresent()) {
      leftOut(clause.mark("every").get(), clause);
    } else if (clause.mark("here").isPresent()) {
      if (region != null) {
        leftOut(region, clause);
      }
    } else if (clause.mark("same").isPresent()) {
      sameOn(clause.mark("same").get());
    } else if (clause.mark("either").isPresent()) {
      oneOf(clause.others.get("either").stream().map(protocol::step).toList(), clause, correction);
    } else if (clause.mark("short").isPresent()) {
      shortAnswer(clause, correction);
    } else if (clause.mark("reply").isPresent()) {
      reply(clause);
    } else if (!steps.isEmpty()) {
      finding(clause, steps, correction);
    }
  }

  // "no masses" belongs to the region being examined where only one of the steps is in it.
  private void oneOf(List<Step> either, Clause clause, boolean correction) {
    List<Step> here = either.stream().filter(step -> step.region().equals(region)).toList();
    if (here.size() == 1) {
      finding(clause, List.of(here.get(0).id()), correction);
    } else {
      askWhich(either, clause, correction);
    }
  }

  private void askWhich(List<Step> steps, Clause clause, boolean correction) {
    List<String> ids = steps.stream().map(Step::id).toList();
    List<Finding> meant =
        findings.of(clause, ids, clause.sides, false).stream()
            .map(UtteranceInterpreter::about)
            .filter(this::isNotNormal)
            .distinct()
            .toList();
    add(new Meaning.Asks(Question.step(ids, meant), correction));
  }

  private static Finding about(Meaning meaning) {
    return meaning instanceof Meaning.States said
        ? said.statement()
        : ((Meaning.Asks) meaning).question().about();
  }

  private boolean isNotNormal(Finding finding) {
    return protocol
        .step(finding.step())
        .value(String.valueOf(finding.value()))
        .filter(value -> value.norm() == Norm.NORMAL)
        .isEmpty();
  }

  private void finding(Clause clause, List<String> steps, boolean correction) {
    List<Meaning> made = findings.of(clause, steps, carried.of(clause, steps), correction);
    if (made.isEmpty()) {
      addToEarlier(clause, steps);
    }
    made.forEach(this::add);
  }

  // "two by three centimetres" behind "fontanelle soft": details of what was just stated.
  private void addToEarlier(Clause clause, List<String> steps) {
    for (String step : steps) {
      for (int i = recent.size() - 1; i >= 0; i--) {
        Finding earlier = recent.get(i);
        if (earlier.step().equals(step) && earlier.value() != null) {
          Clause again = clause;
          again.values.add(earlier.value());
          findings.of(again, List.of(step), sidesOf(earlier), false).forEach(this::add);
          return;
        }
      }
    }
    add(new Meaning.Asks(Question.step(steps), false));
  }

  private static List<Side> sidesOf(Finding statement) {
    return statement.side() == null ? List.of() : List.of(statement.side());
  }

  private void add(Meaning meaning) {
    meanings.add(meaning);
    if (meaning instanceof Meaning.States finding) {
      enter(protocol.step(finding.statement().step()).region());
      recent.add(finding.statement());
    } else if (meaning instanceof Meaning.Asks asks) {
      if (asks.question().about() != null) {
        enter(protocol.step(asks.question().about().step()).region());
      }
      if (open == null) {
        open = asks.question();
        overtaken = false;
        openIsCorrection = asks.correction();
      }
    }
  }

  private void enter(String newRegion) {
    if (!newRegion.equals(region)) {
      region = newRegion;
      recent = new ArrayList<>();
    }
  }

  private void wholeRegion(String id) {
    Region whole = protocol.region(id).orElseThrow();
    WholeRegion.normal(whole, source).forEach(normal -> add(new Meaning.States(normal, false)));
  }

  private void leftOut(String id, Clause clause) {
    Region whole = protocol.region(id).orElseThrow();
    WholeRegion.notExamined(whole, clause, findings)
        .forEach(statement -> add(new Meaning.States(statement, false)));
  }

  private void sameOn(String where) {
    Optional<Side> last =
        recent.stream().map(Finding::side).filter(side -> side != null).reduce((a, b) -> b);
    if (last.isEmpty()) {
      add(new Meaning.Asks(Question.step(List.of()), false));
      return;
    }
    Side to = where.equals("other") ? last.get().other() : Side.of(where);
    List<Finding> copies =
        recent.stream()
            .filter(statement -> statement.side() == to.other())
            .map(statement -> statement.withSide(to))
            .filter(copy -> !recent.contains(copy))
            .toList();
    copies.forEach(copy -> add(new Meaning.States(copy, false)));
  }

  private void shortAnswer(Clause clause, boolean correction) {
    if (region == null || clause.values.isEmpty()) {
      return;
    }
    String said = clause.values.get(0);
    List<Step> candidates = ShortAnswer.steps(protocol.region(region).orElseThrow(), said);
    if (candidates.size() != 1) {
      askWhich(candidates, clause, correction);
      return;
    }
    Step step = candidates.get(0);
    clause.values.set(0, ShortAnswer.value(step, said).orElseThrow());
    finding(clause, List.of(step.id()), correction);
  }

  private void command(Command command, boolean doubtful) {
    boolean answers = command == Command.YES || command == Command.NO;
    if (answers
        && !offering
        && open != null
        && open.kind() == Question.Kind.DETAIL
        && open.about() != null) {
      boolean yesOrNo =
          protocol
              .step(open.about().step())
              .detail(open.detail())
              .map(detail -> detail.values().contains("yes"))
              .orElse(false);
      if (yesOrNo) {
        String asked = open.detail();
        complete(close().about(), Map.of(asked, command.id()));
        return;
      }
    }
    meanings.add(new Meaning.Instruction(command, doubtful));
  }

  private void pick(Clause clause) {
    meanings.add(
        new Meaning.Picks(
            !clause.mark("pick").get().equals("not"),
            clause.others.getOrDefault("nth", List.of()).stream().map(Integer::valueOf).toList(),
            clause.steps,
            clause.sides.size() == 1 ? clause.sides.iterator().next() : null));
  }

  private void reply(Clause clause) {
    if (open == null) {
      return;
    }
    switch (open.kind()) {
      case SIDE -> {
        if (!clause.sides.isEmpty() && isNotOvertaken()) {
          closeWithSides(clause.sides);
        }
      }
      case DETAIL -> {
        if (open.detail().equals(Detail.SIDE)) {
          if (clause.sides.size() == 1 && isNotOvertaken()) {
            closeWithSides(clause.sides);
          }
        } else {
          answerWithDetails(clause);
        }
      }
      case CONTRADICTION -> {
        List<String> replies = clause.others.get("reply");
        if (replies.contains("first") || replies.contains("second")) {
          choose(replies.contains("second"));
        }
      }
      default -> {
        // A number or a step is said again in full.
      }
    }
  }

  /**
   * "No, sorry, left": what was said last is on this side and not where it was put.
   *
   * @param other the side; empty for that on which it was not put
   * @param outright whether it can only be meant so; else the side is asked for
   * @return whether there is something it can be meant for
   */
  boolean amend(Optional<Side> other, boolean outright) {
    if (open != null && !overtaken && asksForSide(open)) {
      other.ifPresent(one -> closeWithSides(List.of(one)));
      return other.isPresent();
    }
    Finding last = recent.isEmpty() ? null : recent.get(recent.size() - 1);
    Side side = other.orElse(last == null || last.side() == null ? null : last.side().other());
    if (last == null && !outright) {
      return false;
    }
    if (last == null || last.side() == null || last.side() == side) {
      List<String> about = last == null ? List.of() : List.of(last.step());
      add(new Meaning.Asks(Question.step(about), false));
      return true;
    }
    takeBack(last);
    findings.complete(last.withSide(outright ? side : null), false).forEach(this::add);
    return true;
  }

  private static boolean asksForSide(Question question) {
    return question.kind() == Question.Kind.SIDE || Detail.SIDE.equals(question.detail());
  }

  private void takeBack(Finding last) {
    recent.remove(recent.size() - 1);
    boolean justNow =
        meanings.removeIf(
            meaning -> meaning instanceof Meaning.States said && said.statement().equals(last));
    if (justNow) {
      meanings.removeIf(
          meaning -> meaning instanceof Meaning.Asks asks && last.equals(asks.question().about()));
    } else {
      meanings.add(new Meaning.Withdraws(last));
    }
    if (open != null && last.equals(open.about())) {
      open = null;
    }
  }

  // "Barlow positive right negative left": once something else was said, a side is no answer.
  private boolean isNotOvertaken() {
    return meanings.isEmpty()
        || meanings.get(meanings.size() - 1) instanceof Meaning.Asks last
            && asksForSide(last.question());
  }

  private void closeWithSides(Collection<Side> sides) {
    Question closed = close();
    sides.stream()
        .sorted()
        .map(closed.about()::withSide)
        .flatMap(statement -> findings.complete(statement, openIsCorrection).stream())
        .forEach(this::add);
  }

  // "at the apex, radiating to the axilla" tells more of the finding than was asked.
  private void answerWithDetails(Clause clause) {
    Map<String, String> told = new TreeMap<>();
    for (Detail detail : protocol.step(open.about().step()).details()) {
      if (detail.belongsTo(open.about().value()) && clause.others.containsKey(detail.id())) {
        told.put(detail.id(), String.join(",", clause.others.get(detail.id())));
      }
    }
    if (told.containsKey(open.detail())) {
      complete(close().about(), told);
    } else if (!told.isEmpty()) {
      complete(open.about(), told);
    }
  }

  private void complete(Finding about, Map<String, String> told) {
    Map<String, String> details = new TreeMap<>(about.details());
    details.putAll(told);
    Finding completed = about.withDetails(details);
    recent.replaceAll(earlier -> earlier.equals(about) ? completed : earlier);
    add(new Meaning.States(completed, openIsCorrection));
    if (open == null) {
      open = findings.stillAsked(completed).findFirst().orElse(null);
    }
  }

  private void choose(boolean newer) {
    Question closed = close();
    if (newer) {
      add(new Meaning.States(closed.about(), true));
    }
  }

  private Question close() {
    Question closed = open;
    open = null;
    meanings.add(new Meaning.Answers(closed));
    return closed;
  }
}
