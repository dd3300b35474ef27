package tiptoe.exam;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.language.Meaning;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** What unsure utterances seem to say and a yes would record, and when it is asked. */
record OpenOffers(ExamRecord record) {

  /** What is open of all that waits, oldest first; each thing once, as it was said last. */
  List<Offer.Part> parts() {
    // By step and by slot: hours of one examination leave thousands that wait.
    Map<String, List<Answer>> answers =
        record.answers().stream().collect(Collectors.groupingBy(Answer::step));
    Map<String, Integer> facts = new HashMap<>();
    record
        .events(Event.ContextStated.class)
        .filter(one -> one.utterance() != null)
        .forEach(one -> facts.merge(one.fact(), one.utterance(), Math::max));
    Map<Slot, Integer> said = new HashMap<>();
    record.statements().stream()
        .filter(one -> one.stands() && !one.statement().group() && one.utterance() != null)
        .forEach(one -> said.merge(one.slot(), one.utterance(), Math::max));
    List<Offer.Part> all =
        record.unsure().stream()
            .flatMap(one -> one.offered().stream().map(offered -> new Offer.Part(one, offered)))
            .filter(part -> !isStated(answers, part))
            .filter(part -> !isReplaced(part, said) && !isStatedSince(part, facts))
            .toList();
    Map<Slot, List<Offer.Part>> later = new HashMap<>();
    Set<String> laterFacts = new HashSet<>();
    Map<Object, Offer.Part> open = new LinkedHashMap<>();
    Set<Offer.Part> replaced = Collections.newSetFromMap(new IdentityHashMap<>());
    for (int at = all.size() - 1; at >= 0; at--) {
      Offer.Part part = all.get(at);
      if (part.meaning() instanceof Meaning.Fact fact) {
        if (!laterFacts.add(fact.id())) {
          replaced.add(part);
        }
      } else if (part.meaning() instanceof Meaning.States states) {
        List<Offer.Part> same =
            later.computeIfAbsent(slot(states.statement()), slot -> new ArrayList<>());
        if (same.stream().anyMatch(one -> replaces(one, part))) {
          replaced.add(part);
        }
        if (same.stream().noneMatch(one -> one.meaning().equals(part.meaning()))) {
          same.add(part);
        }
      }
    }
    all.stream()
        .filter(part -> !replaced.contains(part))
        .forEach(part -> open.putIfAbsent(said(part.meaning()), part));
    return List.copyOf(open.values());
  }

  private static Object said(Meaning offered) {
    return offered instanceof Meaning.Fact ? offered : offered.findings();
  }

  private boolean isStated(Map<String, List<Answer>> answers, Offer.Part part) {
    if (part.meaning() instanceof Meaning.Fact fact) {
      return record.baby().is(fact.id(), fact.value());
    }
    return part.meaning().findings().stream()
        .flatMap(said -> answers.getOrDefault(said.step(), List.of()).stream())
        .anyMatch(answer -> states(answer, part));
  }

  private static boolean states(Answer answer, Offer.Part part) {
    return part.meaning().findings().stream()
        .anyMatch(
            said ->
                answer.step().equals(said.step())
                    && (said.side() == null || answer.side() == said.side())
                    && Objects.equals(answer.value(), said.value())
                    && Objects.equals(answer.quantity(), said.quantity()));
  }

  /** Whether it was surely said since what is found there: only what is abnormal is still asked. */
  private boolean isReplaced(Offer.Part part, Map<Slot, Integer> later) {
    return part.meaning() instanceof Meaning.States said
        && hasOneValue(said.statement())
        && !isAbnormal(said.statement())
        && later.getOrDefault(slot(said.statement()), 0) > part.of().number();
  }

  private static boolean isStatedSince(Offer.Part part, Map<String, Integer> later) {
    return part.meaning() instanceof Meaning.Fact fact
        && later.getOrDefault(fact.id(), 0) > part.of().number();
  }

  private boolean replaces(Offer.Part later, Offer.Part part) {
    return later.of() != part.of()
        && later.meaning() instanceof Meaning.States now
        && part.meaning() instanceof Meaning.States before
        && slot(now.statement()).equals(slot(before.statement()))
        && hasOneValue(before.statement())
        && (isAbnormal(now.statement()) || !isAbnormal(before.statement()))
        && !now.statement().equals(before.statement());
  }

  private boolean hasOneValue(Finding said) {
    return !step(said).many();
  }

  private boolean isAbnormal(Finding said) {
    return step(said)
        .value(String.valueOf(said.value()))
        .map(Value::norm)
        .filter(norm -> norm == Norm.ABNORMAL)
        .isPresent();
  }

  private Step step(Finding said) {
    return record.protocol().step(said.step());
  }

  private static Slot slot(Finding said) {
    return new Slot(said.step(), said.side());
  }

  /** The utterances that any of it is of, oldest first. */
  List<Utterance> utterances() {
    return parts().stream().map(Offer.Part::of).distinct().toList();
  }

  /** What is asked next of these: as much as is kept in mind, of whole utterances. */
  List<Utterance> next(List<Utterance> waiting) {
    List<Offer.Part> open = parts();
    List<Utterance> next = new ArrayList<>();
    List<Offer.Part> parts = new ArrayList<>();
    for (Utterance one : waiting) {
      open.stream().filter(part -> part.of().equals(one)).forEach(parts::add);
      if (!next.isEmpty() && Offer.together(parts).size() > Offer.MOST) {
        break;
      }
      next.add(one);
    }
    return next;
  }

  /** What is read out now unasked: what was not read out yet, once it is as much as can be. */
  List<Utterance> toReadOut() {
    Set<Integer> asked = new HashSet<>();
    record.events(Event.OfferAsked.class).forEach(one -> asked.addAll(one.utterances()));
    List<Offer.Part> fresh =
        parts().stream().filter(part -> !asked.contains(part.of().number())).toList();
    return Offer.together(fresh).size() < Offer.MOST
        ? List.of()
        : next(fresh.stream().map(Offer.Part::of).distinct().toList());
  }

  /**
   * What is asked now: what was read out last, what the end would leave out, else what was said
   * last, if unsurely. A question that it did not raise itself waits meanwhile.
   */
  Optional<Offer> asked() {
    if (!record.phase().takesFindings()) {
      return Optional.empty();
    }
    Optional<Offer> again = record.offerAsked().flatMap(this::again);
    if (again.isPresent()) {
      return again;
    }
    if (record.phase() == Phase.ENDING) {
      return Optional.of(next(utterances()))
          .filter(next -> !next.isEmpty())
          .map(next -> new Offer(Offer.Way.AT_END, open(next)));
    }
    int asking = record.openQuestion().map(Asked::utterance).filter(Objects::nonNull).orElse(0);
    return record.utterances().stream()
        .filter(one -> one.heard().outcome() != Outcome.IGNORED)
        .reduce((first, last) -> last)
        .filter(one -> one.number() > asking)
        .filter(Utterance::waits)
        .filter(one -> !one.offered().isEmpty())
        .map(OpenOffers::whole);
  }

  private Optional<Offer> again(Event.OfferAsked asked) {
    List<Utterance> waiting =
        asked.utterances().stream()
            .flatMap(number -> record.utterance(number).stream())
            .filter(Utterance::waits)
            .toList();
    if (asked.utterances().size() == 1) {
      return waiting.stream().findFirst().map(OpenOffers::whole);
    }
    List<Offer.Part> open = open(waiting);
    return open.isEmpty() ? Optional.empty() : Optional.of(new Offer(Offer.Way.TOGETHER, open));
  }

  private List<Offer.Part> open(List<Utterance> of) {
    return parts().stream().filter(part -> of.contains(part.of())).toList();
  }

  private static Offer whole(Utterance one) {
    return new Offer(
        Offer.Way.ALONE,
        Stream.of(one)
            .flatMap(of -> of.offered().stream())
            .map(said -> new Offer.Part(one, said))
            .toList());
  }
}
