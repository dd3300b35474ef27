package tiptoe.exam;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** What is done and what is missing, for one baby. */
public final class Checklist {
  private static final String REASON = "reason";

  private final Protocol protocol;
  private final Baby baby;
  private final List<Answer> answers;
  private final Set<Slot> answered = new HashSet<>();
  private final Map<Slot, String> deferred = new LinkedHashMap<>();

  Checklist(ExamRecord record) {
    this(record.protocol(), record.baby(), record.answers());
  }

  /** That of a baby of which this was found. */
  public Checklist(Protocol protocol, Baby baby, List<Answer> answers) {
    this.protocol = protocol;
    this.baby = baby;
    this.answers = answers;
    for (Answer answer : answers) {
      Step step = protocol.step(answer.step());
      Slot slot = new Slot(answer.step(), step.sided() ? answer.side() : null);
      if (Value.NOT_EXAMINED.equals(answer.value())) {
        deferred.put(slot, answer.details().getOrDefault(REASON, ""));
      } else if (answer.value() == null || !step.beside().contains(answer.value())) {
        answered.add(slot);
      }
    }
    deferred.keySet().removeAll(answered);
  }

  List<Slot> missing() {
    return Stream.concat(missing(true), missing(false)).toList();
  }

  /** Key steps that nobody has answered. */
  public List<Slot> missingKeySteps() {
    return missing(true).toList();
  }

  /** What was left out is owed: it stays missing, with its reason. */
  Map<Slot, String> deferred() {
    return java.util.Collections.unmodifiableMap(deferred);
  }

  private Stream<Slot> missing(boolean key) {
    return protocol
        .steps()
        .filter(step -> step.key() == key && applies(step))
        .flatMap(step -> slots(step).stream().filter(slot -> isOwed(step, slot)));
  }

  private boolean isOwed(Step step, Slot slot) {
    return !answered.contains(slot) && (!step.optional() || deferred.containsKey(slot));
  }

  private boolean applies(Step step) {
    return step.appliesTo(baby.sex().orElse(null));
  }

  private static List<Slot> slots(Step step) {
    return step.sided()
        ? List.of(new Slot(step.id(), Side.RIGHT), new Slot(step.id(), Side.LEFT))
        : List.of(new Slot(step.id(), null));
  }

  List<MissingDetail> missingDetails() {
    List<MissingDetail> missing = new ArrayList<>();
    for (Answer answer : answers) {
      Step step = protocol.step(answer.step());
      Slot slot = new Slot(answer.step(), answer.side());
      wanted(step, answer.value())
          .filter(detail -> !QuestionUpkeep.has(answer, detail))
          .forEach(detail -> missing.add(new MissingDetail(slot, answer.value(), detail)));
    }
    return missing;
  }

  private static Stream<String> wanted(Step step, String value) {
    if (value == null || value.equals(Value.NOT_EXAMINED)) {
      return Stream.of();
    }
    boolean sided = step.value(value).map(Value::sided).orElse(false);
    return Stream.concat(
        sided ? Stream.of(Detail.SIDE) : Stream.of(),
        step.details().stream()
            .filter(detail -> detail.ask() && detail.belongsTo(value))
            .map(Detail::id));
  }

  List<Progress> progress() {
    return protocol.regions().stream().map(this::progress).toList();
  }

  private Progress progress(Region region) {
    int done = 0;
    int total = 0;
    int keyMissing = 0;
    for (Step step : region.steps()) {
      for (Slot slot : slots(step)) {
        boolean has = answered.contains(slot);
        if (has || applies(step) && isOwed(step, slot)) {
          total++;
          done += has ? 1 : 0;
          keyMissing += !has && step.key() ? 1 : 0;
        }
      }
    }
    return new Progress(region.id(), done, total, keyMissing);
  }
}
