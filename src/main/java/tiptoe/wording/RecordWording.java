package tiptoe.wording;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.clinical.PlanItem;
import tiptoe.exam.Answer;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Remark;
import tiptoe.exam.Signature;
import tiptoe.exam.Slot;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** The record put into words, the same for every report that people read. */
public final class RecordWording {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);

  private static final List<Side> BOTH = List.of(Side.LEFT, Side.RIGHT);

  private final ExamRecord record;
  private final Assessment assessment;
  private final FindingWording phrasing;

  public RecordWording(ExamRecord record, Assessment assessment) {
    this.record = record;
    this.assessment = assessment;
    this.phrasing = new FindingWording(record.protocol());
  }

  /**
   * A line of the report.
   *
   * @param name step and side
   * @param said value, number and details
   * @param norm how it stands to what is expected; null for a number
   * @param examined whether it was examined at all
   * @param group whether it was said for the whole region
   */
  public record Row(String name, String said, Norm norm, boolean examined, boolean group) {
    /** A sign that tells the lines apart without colour. */
    public String mark() {
      if (!examined) {
        return "–";
      }
      return norm == Norm.ABNORMAL ? "!" : norm == Norm.BENIGN ? "~" : "+";
    }
  }

  public ExamRecord record() {
    return record;
  }

  public Assessment assessment() {
    return assessment;
  }

  public String title() {
    return "Newborn examination" + record.label().map(label -> ": " + label).orElse("");
  }

  public boolean isDraft() {
    return !record.signed();
  }

  /** When the last thing happened to the record; null for an empty one. */
  public Instant asOf() {
    return record.entries().isEmpty()
        ? null
        : record.entries().get(record.entries().size() - 1).at();
  }

  public static String moment(Instant instant) {
    return instant == null ? "" : MOMENT.format(instant);
  }

  /** What is known of the baby, for people. */
  public Map<String, String> baby() {
    Map<String, String> facts = new TreeMap<>();
    record.baby().facts().forEach((id, value) -> facts.put(Labels.title(id), fact(id, value)));
    return facts;
  }

  private String fact(String id, String value) {
    Measure measure = record.protocol().fact(id).map(Fact::measure).orElse(null);
    return measure == null ? Labels.of(value) : value + " " + measure.unit();
  }

  /** What was found in a region; what is the same on both sides is one row. */
  public List<Row> rows(Region region) {
    return rows(
        record.answers().stream()
            .filter(answer -> record.protocol().step(answer.step()).region().equals(region.id()))
            .toList());
  }

  /** The findings that are not normal, from head to toe. */
  public List<Row> abnormal() {
    return rows(
        record.answers().stream().filter(answer -> row(answer).norm() == Norm.ABNORMAL).toList());
  }

  private List<Row> rows(List<Answer> answers) {
    Map<String, List<Answer>> alike =
        answers.stream()
            .collect(
                Collectors.groupingBy(
                    answer -> answer.step() + ": " + row(answer).said(),
                    LinkedHashMap::new,
                    Collectors.toList()));
    return alike.values().stream().map(this::row).toList();
  }

  private Row row(List<Answer> alike) {
    Row row = row(alike.get(0));
    boolean group = alike.stream().allMatch(Answer::group);
    String name = sides(alike.get(0).step(), alike.stream().map(Answer::side).toList());
    return new Row(name, row.said(), row.norm(), row.examined(), group);
  }

  private String sides(String step, List<Side> sides) {
    return sides.containsAll(BOTH)
        ? record.protocol().step(step).label() + ", both sides"
        : phrasing.name(step, sides.get(0));
  }

  /** Whether something abnormal of a region is on this side, or on no side in particular. */
  public boolean isAbnormal(Region region, Side side) {
    return record.answers().stream()
        .filter(answer -> answer.side() == null || answer.side() == side)
        .filter(answer -> record.protocol().step(answer.step()).region().equals(region.id()))
        .anyMatch(answer -> row(answer).norm() == Norm.ABNORMAL);
  }

  /** Whether something of a region was not examined on this side, or on no side in particular. */
  public boolean isMissing(Region region, Side side) {
    return record.missing().stream()
        .filter(slot -> slot.side() == null || slot.side() == side)
        .anyMatch(slot -> record.protocol().step(slot.step()).region().equals(region.id()));
  }

  private Row row(Answer answer) {
    Step step = record.protocol().step(answer.step());
    Norm norm = step.value(orNone(answer.value())).map(Value::norm).orElse(null);
    boolean examined = !Value.NOT_EXAMINED.equals(answer.value());
    String name = phrasing.name(answer.step(), answer.side());
    return new Row(name, phrasing.said(answer.finding()), norm, examined, answer.group());
  }

  /** Names of what was not examined in a region; key steps are marked. */
  public List<String> missing(Region region) {
    Map<String, List<Side>> missing = new LinkedHashMap<>();
    for (Slot slot : record.missing()) {
      if (record.protocol().step(slot.step()).region().equals(region.id())) {
        missing.computeIfAbsent(slot.step(), step -> new ArrayList<>()).add(slot.side());
      }
    }
    return missing.entrySet().stream()
        .map(
            entry ->
                sides(entry.getKey(), entry.getValue())
                    + (record.protocol().step(entry.getKey()).key() ? " (key step)" : ""))
        .toList();
  }

  /**
   * Names of the findings that raised a flag; empty where it rests on what is known of the baby
   * alone.
   */
  public String why(Flag flag) {
    List<Answer> raising =
        record.answers().stream()
            .filter(answer -> flag.steps().contains(answer.step()))
            .filter(answer -> flag.statements().contains(answer.statement()))
            .toList();
    return rows(raising).stream().map(Row::name).collect(Collectors.joining(", "));
  }

  /** Who dictated; empty where nobody was named. */
  public String dictated() {
    return record.opened() == null || record.opened().author() == null
        ? ""
        : record.opened().author();
  }

  /** Questions and unsure utterances that nobody has settled. */
  public List<String> unsettled() {
    List<String> lines = new ArrayList<>();
    record.openQuestions().forEach(asked -> lines.add(asked.question().text()));
    record.unsure().forEach(heard -> lines.add("unsure: “" + heard.heard().text() + "”"));
    return lines;
  }

  public List<String> gaps() {
    return record.gaps().stream()
        .map(
            gap ->
                "%.0f s not heard from second %.0f: %s"
                    .formatted(gap.seconds(), gap.from(), gap.reason()))
        .toList();
  }

  public List<String> sizes() {
    return SizeWording.of(assessment.sizes(), record.protocol());
  }

  public List<String> results() {
    return assessment.results().stream().map(result -> result.text()).toList();
  }

  public List<String> plan() {
    return assessment.plan().stream().map(RecordWording::planned).toList();
  }

  private static String planned(PlanItem item) {
    String date = item.from() == null ? "" : " (" + day(item.from()) + until(item) + ")";
    return item.what() + ", " + item.due() + date + " — " + item.reason();
  }

  private static String until(PlanItem item) {
    return item.to() == null || item.to().equals(item.from()) ? "" : " to " + day(item.to());
  }

  private static String day(String moment) {
    return moment.length() > 10 ? moment.substring(0, 16).replace('T', ' ') : moment;
  }

  public List<String> needs() {
    return assessment.needs().stream()
        .map(need -> Labels.of(need.fact()) + ": " + String.join("; ", need.reasons()))
        .toList();
  }

  public List<String> remarks() {
    return record.remarks().stream().map(Remark::marked).toList();
  }

  public List<String> signatures() {
    return record.signatures().stream().map(RecordWording::signed).toList();
  }

  private static String signed(Signature signature) {
    return "signed by %s, %s, %s; seal %s"
        .formatted(signature.name(), signature.role(), moment(signature.at()), signature.seal());
  }

  private static String orNone(String value) {
    return value == null ? "" : value;
  }
}
