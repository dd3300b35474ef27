package tiptoe.screen;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Level;
import tiptoe.clinical.Size;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Offer;
import tiptoe.exam.Progress;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Slot;
import tiptoe.exam.Utterance;
import tiptoe.finding.Outcome;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.wording.OutcomeWording;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/**
 * What a frame says of the record, worked out once for each record and not for each frame.
 *
 * @param regions progress from head to toe
 * @param title the name of the region being examined
 * @param here the region being examined, or the first that is not done
 * @param missing what is missing here
 * @param elsewhere a line for each other region that lacks key steps, with these
 * @param board the steps here, with both sides
 * @param heard the last utterance: its words, then what became of it
 * @param answered the same where an answer to it is shown beside
 * @param flags what needs attention, the most pressing first
 * @param sizes measurements with their centiles
 */
record Overview(
    List<Progress> regions,
    String title,
    Region here,
    List<Missing> missing,
    List<String> elsewhere,
    Board board,
    List<Line> heard,
    List<Line> answered,
    List<Line> flags,
    List<Line> sizes) {

  /**
   * A step without an answer.
   *
   * @param shortText its name, with the side where only one is missing
   * @param slots how many answers it lacks
   * @param key whether it is a key step
   * @param reminder good practice; null where there is none
   */
  record Missing(String shortText, int slots, boolean key, String reminder) {}

  static Overview of(RecordWording wording, Glyphs glyphs) {
    Maker maker = new Maker(wording.record(), wording.words(), glyphs);
    List<Progress> progress = wording.record().progress();
    Region here = maker.here(progress);
    return new Overview(
        progress,
        wording.words().region(here),
        here,
        maker.missing(here),
        maker.elsewhere(here),
        Board.of(wording, here, maker.fresh(), glyphs),
        maker.heard(UnaryOperator.identity()),
        maker.heard(OutcomeWording::answered),
        flags(wording),
        maker.sizes(wording.assessment()));
  }

  private static List<Line> flags(RecordWording wording) {
    return wording.assessment().flags().stream()
        .map(flag -> new Line(wording.flag(flag), Maker.ink(flag.level())))
        .toList();
  }

  private record Maker(ExamRecord record, Words words, Glyphs glyphs) {
    Region here(List<Progress> progress) {
      return Optional.ofNullable(record.region())
          .or(() -> progress.stream().filter(one -> !one.done()).map(Progress::region).findFirst())
          .flatMap(record.protocol()::region)
          .orElse(record.protocol().regions().get(0));
    }

    private Step step(String id) {
      return record.protocol().step(id);
    }

    private boolean isIn(Region region, String step) {
      return step(step).region().equals(region.id());
    }

    List<Missing> missing(Region region) {
      Map<String, List<Slot>> bySteps =
          record.missing().stream()
              .filter(slot -> isIn(region, slot.step()))
              .collect(
                  Collectors.groupingBy(
                      Slot::step, java.util.LinkedHashMap::new, Collectors.toList()));
      Stream<Missing> steps =
          bySteps.entrySet().stream().map(entry -> missing(entry.getKey(), entry.getValue()));
      Stream<Missing> details =
          record.missingDetails().stream()
              .filter(detail -> isIn(region, detail.slot().step()))
              .map(
                  detail ->
                      new Missing(
                          words.name(detail.slot())
                              + ": "
                              + words.detail(detail.slot().step(), detail.detail()),
                          1,
                          false,
                          null));
      return Stream.concat(steps, details).toList();
    }

    List<String> elsewhere(Region here) {
      return record.protocol().regions().stream()
          .filter(region -> !region.equals(here))
          .flatMap(region -> lacking(region).stream())
          .toList();
    }

    private Optional<String> lacking(Region region) {
      String keys =
          missing(region).stream()
              .filter(Missing::key)
              .map(Missing::shortText)
              .collect(Collectors.joining(", "));
      return keys.isEmpty() ? Optional.empty() : Optional.of(words.region(region) + ": " + keys);
    }

    private Missing missing(String id, List<Slot> slots) {
      Step step = step(id);
      boolean both = slots.stream().map(Slot::side).filter(side -> side != null).count() == 2;
      Side side = both ? null : slots.get(0).side();
      String name = both ? words.step(id) : words.name(id, side);
      String text = name + words.deferred(record.deferred(), slots);
      return new Missing(text, slots.size(), step.key(), reminder(step));
    }

    private String reminder(Step step) {
      return step.reminder() == null ? null : words.spelled(step.reminder());
    }

    List<Integer> fresh() {
      return last()
          .map(
              utterance ->
                  record.statements().stream()
                      .filter(said -> isOf(said, utterance))
                      .flatMap(said -> Stream.concat(Stream.of(said.number()), said.of().stream()))
                      .toList())
          .orElse(List.of());
    }

    private static boolean isOf(RecordedFinding said, Utterance utterance) {
      return Integer.valueOf(utterance.number()).equals(said.utterance());
    }

    // What was not meant for the record does not push what was off the screen.
    private Optional<Utterance> last() {
      return record.utterances().stream()
          .filter(utterance -> utterance.heard().outcome() != Outcome.IGNORED)
          .reduce((first, second) -> second);
    }

    List<Line> heard(UnaryOperator<OutcomeWording> change) {
      return OutcomeWording.last(record, words)
          .map(change)
          .map(
              outcome ->
                  Stream.concat(
                          Stream.of(new Line("\"" + outcome.heard() + "\"", Ink.QUIET)),
                          outcome.lines().stream().filter(this::isShownHere).map(this::line))
                      .toList())
          .orElse(List.of());
    }

    /** What is read out together is the prompt. */
    private boolean isShownHere(OutcomeWording.Line line) {
      return !line.isOffer()
          || record.toConfirm().filter(one -> one.way() == Offer.Way.TOGETHER).isEmpty();
    }

    private Line line(OutcomeWording.Line line) {
      String text = glyphs.of(line.sign()) + " " + line.shown();
      return switch (line.sign()) {
        case UNSURE -> new Line(text, Ink.UNSURE);
        case SKIPPED -> new Line(text, Ink.QUIET);
        default -> new Line(text, Ink.FRESH);
      };
    }

    private static Ink ink(Level level) {
      return switch (level) {
        case EMERGENCY, URGENT -> Ink.ALERT;
        case ARRANGE -> Ink.STRONG;
        case NOTE -> Ink.PLAIN;
      };
    }

    List<Line> sizes(Assessment assessment) {
      return assessment.sizes().stream().map(size -> new Line(size(size), Ink.PLAIN)).toList();
    }

    private String size(Size size) {
      String place =
          size.against().stream().findFirst().map(one -> ", " + words.centile(one)).orElse("");
      return words.measured(size) + place;
    }
  }
}
