package tiptoe.wording;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Offer;
import tiptoe.exam.Slot;
import tiptoe.finding.Command;
import tiptoe.language.Meaning;

/** What is shown when the clinician asks what is missing, or for what was recorded. */
public final class CommandReply {
  static final String END = "end the examination, yes or no?";

  private CommandReply() {}

  /** The lines of the answer; none where the command asks for nothing. */
  public static List<String> of(Command command, ExamRecord record, Words words) {
    Stream<String> lines =
        switch (command) {
          case SAY_MISSING ->
              record.missing().isEmpty()
                  ? Stream.of("nothing is missing")
                  : byRegion(record.missing(), record, words);
          case READ_BACK -> recorded(record, words);
          case SAY_AGAIN -> again(record, words);
          case SAY_UNSURE ->
              record.offers().isEmpty() ? Stream.of("nothing is unsure") : Stream.empty();
          default -> Stream.empty();
        };
    return lines.toList();
  }

  /** A line for each region, those with key steps first; key steps come first in each. */
  private static Stream<String> byRegion(List<Slot> missing, ExamRecord record, Words words) {
    Map<String, Map<String, List<Slot>>> regions = new LinkedHashMap<>();
    for (Slot slot : missing) {
      regions
          .computeIfAbsent(region(slot, record), region -> new LinkedHashMap<>())
          .computeIfAbsent(slot.step(), step -> new ArrayList<>())
          .add(slot);
    }
    return regions.entrySet().stream()
        .map(
            one ->
                words.region(record.protocol().region(one.getKey()).orElseThrow())
                    + ": "
                    + one.getValue().values().stream()
                        .flatMap(slots -> names(slots, record.deferred(), words))
                        .collect(Collectors.joining(", ")));
  }

  private static String region(Slot slot, ExamRecord record) {
    return record.protocol().step(slot.step()).region();
  }

  /** Slots by their names, both sides of a step as one. */
  public static List<String> names(List<Slot> missing, ExamRecord record, Words words) {
    return missing.stream()
        .collect(Collectors.groupingBy(Slot::step, LinkedHashMap::new, Collectors.toList()))
        .values()
        .stream()
        .flatMap(slots -> names(slots, record.deferred(), words))
        .toList();
  }

  /** What is missing of one step; both sides at once where nothing tells them apart. */
  private static Stream<String> names(List<Slot> slots, Map<Slot, String> deferred, Words words) {
    boolean alike = slots.stream().map(deferred::get).distinct().count() == 1;
    return slots.size() > 1 && alike
        ? Stream.of(
            words.step(slots.get(0).step()) + Words.BOTH_SIDES + words.deferred(deferred, slots))
        : slots.stream().map(slot -> words.missing(slot, deferred));
  }

  /**
   * What is missing, short enough to be listened to: key steps, the rest of the region being
   * examined, and how much more; the screen has it all.
   */
  static List<String> missingAloud(ExamRecord record, Words words) {
    List<Slot> all = record.missing();
    List<Slot> told =
        all.stream()
            .filter(
                slot ->
                    record.missingKeySteps().contains(slot)
                        || region(slot, record).equals(record.region()))
            .toList();
    long more =
        all.stream().filter(slot -> !told.contains(slot)).map(Slot::step).distinct().count();
    Stream<String> rest =
        more == 0 ? Stream.empty() : Stream.of((told.isEmpty() ? "" : "and ") + more + " others");
    return all.isEmpty()
        ? of(Command.SAY_MISSING, record, words)
        : Stream.concat(byRegion(told, record, words), rest).toList();
  }

  /** What the examination would end without, and how to end it all the same. */
  public static List<String> beforeEnd(ExamRecord record, Words words) {
    Stream<String> pressing =
        record.pressing().stream()
            .map(flag -> "not settled, " + flag.level() + ", confirm now: " + flag.text())
            .map(words::spelled);
    List<Slot> keys = record.missingKeyStepsBesideOffers();
    Stream<String> missing =
        keys.isEmpty()
            ? Stream.empty()
            : Stream.concat(
                Stream.of("key steps missing:"),
                byRegion(keys, record, words).map(line -> "  " + line));
    Stream<String> offers =
        record.offers().isEmpty()
            ? Stream.empty()
            : Stream.of(
                "not recorded: " + offered(record, words) + "; \"yes to all\" records them");
    boolean clear =
        record.pressing().isEmpty()
            && record.missingKeySteps().isEmpty()
            && record.offers().isEmpty();
    return Stream.of(pressing, offers, missing, Stream.of(clear ? END : "end anyway, yes or no?"))
        .flatMap(lines -> lines)
        .toList();
  }

  /**
   * What is offered with several others: {@code 1 right Barlow: negative; 2 murmur: none; and 3
   * more}.
   */
  public static String offered(ExamRecord record, Words words) {
    List<String> asked = record.toConfirm().map(offer -> numbered(offer, words)).orElse(List.of());
    int more = Offer.together(record.offers()).size() - asked.size();
    return String.join("; ", asked) + (more == 0 ? "" : "; and " + more + " more");
  }

  /** What is offered, with its place: {@code 1 right Barlow: negative}. */
  static List<String> numbered(Offer offer, Words words) {
    List<String> told = new ArrayList<>();
    for (List<Offer.Part> place : offer.places()) {
      Meaning said = place.get(0).meaning();
      String text =
          place.size() > 1 ? words.onBothSides(said.findings().get(0)) : words.offered(said);
      told.add(told.size() + 1 + " " + text);
    }
    return told;
  }

  /** What became of the last utterance that was no command, and what is asked. */
  private static Stream<String> again(ExamRecord record, Words words) {
    List<String> lines = new ArrayList<>();
    OutcomeWording.lastSaid(record, words)
        .ifPresent(said -> said.lines().forEach(line -> lines.add(line.shown())));
    record.openQuestion().ifPresent(asked -> lines.add(words.spelled(asked.question().text())));
    return lines.isEmpty() ? Stream.of("nothing was recorded yet") : lines.stream();
  }

  private static Stream<String> recorded(ExamRecord record, Words words) {
    List<String> lines =
        record.statements().stream()
            .filter(said -> said.stands())
            .map(said -> said.statement())
            .filter(one -> record.protocol().step(one.step()).region().equals(record.region()))
            .map(words::of)
            .toList();
    return lines.isEmpty() ? Stream.of("nothing is recorded here") : lines.stream();
  }
}
