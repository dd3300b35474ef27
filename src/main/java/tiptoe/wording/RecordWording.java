package tiptoe.wording;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.apache.commons.lang3.StringUtils;
import tiptoe.clinical.Assessment;
import tiptoe.clinical.Flag;
import tiptoe.clinical.Level;
import tiptoe.clinical.PlanItem;
import tiptoe.clinical.ProgrammeResult;
import tiptoe.clinical.Size;
import tiptoe.exam.Answer;
import tiptoe.exam.Effect;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Handled;
import tiptoe.exam.Handover;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Remark;
import tiptoe.exam.Signature;
import tiptoe.exam.Slot;
import tiptoe.exam.Status;
import tiptoe.exam.Utterance;
import tiptoe.exam.journal.Integrity;
import tiptoe.finding.Finding;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.settings.Settings;

/** A record and what follows from it, put into words: the same for reports, screens and lines. */
public final class RecordWording {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'").withZone(ZoneOffset.UTC);

  /** Stands in the place of the baby's name and number where neither was stated. */
  public static final String UNIDENTIFIED = "No name or number stated: check whose record this is";

  private static final List<Side> BOTH = List.of(Side.LEFT, Side.RIGHT);

  private final ExamRecord record;
  private final Assessment assessment;
  private final Words words;

  private final Integrity integrity;

  public RecordWording(ExamRecord record, Assessment assessment, Settings settings) {
    this(record, assessment, new Words(record.protocol(), settings), null);
  }

  private RecordWording(
      ExamRecord record, Assessment assessment, Words words, Integrity integrity) {
    this.record = record;
    this.assessment = assessment;
    this.words = words;
    this.integrity = integrity;
  }

  /** The same where it is known whether the record is as it was kept and signed. */
  public RecordWording with(Integrity known) {
    return new RecordWording(record, assessment, words, known);
  }

  /** Whether the record is as it was signed; by its entries alone where no more is known. */
  public Integrity integrity() {
    return integrity == null ? Integrity.of(record) : integrity;
  }

  /**
   * A line of the report.
   *
   * @param name step and side
   * @param said value, number and details
   * @param sign what it comes to
   * @param group whether it was said for the whole region
   * @param by who typed or accepted it in a review; empty where it stands as it was dictated
   */
  public record Row(String name, String said, Sign sign, boolean group, String by) {
    /** A sign that tells the lines apart without colour. */
    public String mark() {
      return sign == Sign.SKIPPED ? "–" : sign.ascii();
    }

    /** Such as {@code left clavicle: crepitus}. */
    public String text() {
      return name + ": " + saidBy();
    }

    /** What was said, and who put it there where it was not dictated. */
    public String saidBy() {
      return said + (by.isEmpty() ? "" : " (in review: " + by + ")");
    }

    /** The same with its sign, and whether it was said for itself. */
    public String line() {
      return mark() + " " + text() + (group ? " (stated for the region)" : "");
    }
  }

  public Words words() {
    return words;
  }

  public ExamRecord record() {
    return record;
  }

  public Assessment assessment() {
    return assessment;
  }

  public String title() {
    return "Newborn examination"
        + record.label().map(PlainText::line).map(label -> ": " + label).orElse("");
  }

  /** What must stand on every page of a record that is not as it was signed; else empty. */
  public String banner() {
    String banner = integrity().banner(record);
    return banner.isEmpty() ? "" : "NOT VALID — " + banner;
  }

  /** All that is wrong with the record, for people. */
  public List<String> alterations() {
    return integrity().problems();
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

  /** What is known of the baby, for people; who it is stands apart. */
  public Map<String, String> baby() {
    Map<String, String> facts = new TreeMap<>();
    record
        .baby()
        .facts()
        .forEach(
            (id, value) -> {
              if (record.protocol().fact(id).filter(this::isApart).isEmpty()) {
                facts.put(words.title(id), PlainText.line(words.fact(id, value)));
              }
            });
    return facts;
  }

  /** Whose record this is, in the order of the protocol: what it is called, and what was stated. */
  public Map<String, String> identity() {
    Map<String, String> identity = new LinkedHashMap<>();
    record
        .baby()
        .identity(record.protocol())
        .forEach(
            (id, value) -> identity.put(words.title(id), PlainText.line(words.fact(id, value))));
    return identity;
  }

  /** The same in one line; says so where nobody said whose record it is. */
  public String identityLine() {
    return Stream.concat(
            record.baby().isIdentified() ? Stream.empty() : Stream.of(UNIDENTIFIED),
            identity().entrySet().stream().map(one -> one.getKey() + ": " + one.getValue()))
        .collect(Collectors.joining("; "));
  }

  /** Name and number without their names, or else what the record is called. */
  public Optional<String> whose() {
    String stated =
        Stream.of("name", "record-number")
            .flatMap(fact -> record.baby().fact(fact).stream())
            .collect(Collectors.joining(", "));
    return (stated.isEmpty() ? record.label() : Optional.of(stated)).map(PlainText::line);
  }

  /** Name, number and birth without their names, for the head of a page. */
  public String shortIdentity() {
    return Stream.concat(
            record.baby().isIdentified() ? Stream.empty() : Stream.of(UNIDENTIFIED),
            Stream.of("name", "record-number", "born-at")
                .flatMap(id -> record.baby().fact(id).map(value -> words.fact(id, value)).stream()))
        .map(PlainText::line)
        .collect(Collectors.joining(", "));
  }

  private boolean isApart(Fact fact) {
    return fact.identifies() || fact.handover();
  }

  /**
   * Consent, what was told and what was set going, with who said it and when: one line for what was
   * said in the same minute.
   */
  public List<String> handover() {
    Map<String, List<String>> lines = new LinkedHashMap<>();
    Handover.of(record)
        .stated()
        .values()
        .forEach(
            one ->
                lines
                    .computeIfAbsent(said(moment(one.at()), one.by()), said -> new ArrayList<>())
                    .add(words.stated(one.fact(), one.value())));
    return lines.entrySet().stream()
        .map(line -> StringUtils.capitalize(String.join("; ", line.getValue())) + line.getKey())
        .map(PlainText::line)
        .toList();
  }

  private static String said(String moment, String by) {
    String said =
        Stream.of(moment, by)
            .filter(one -> one != null && !one.isEmpty())
            .collect(Collectors.joining(", "));
    return said.isEmpty() ? "" : " (" + said + ")";
  }

  /** What became of an item of the plan: {@code done (2026-03-02 12:00 UTC, Sam Fell)}. */
  public static String handled(Handled handled) {
    String at = handled.at() == null ? "" : moment(Instant.parse(handled.at()));
    return PlainText.line(handled.how() + said(at, handled.by()));
  }

  /** What each part of the programme comes to; what does not apply is left out. */
  public Map<String, String> programme() {
    Map<String, String> results = new LinkedHashMap<>();
    assessment.programme().stream()
        .filter(ProgrammeResult::applies)
        .forEach(result -> results.put(words.title(result.part()), outcome(result)));
    return results;
  }

  /** The same, a line each. */
  public List<String> programmeLines() {
    return programme().entrySet().stream()
        .map(part -> part.getKey() + ": " + part.getValue())
        .toList();
  }

  private String outcome(ProgrammeResult result) {
    String owed = String.join(", ", missing(result.owed()));
    return switch (result.outcome()) {
      case NO_CONCERN -> "no concern";
      case NOT_DONE -> "not done, owed: " + owed;
      case NOT_APPLICABLE -> "does not apply";
      case REFERRAL ->
          result.referrals().stream()
                  .map(this::referral)
                  .distinct()
                  .collect(Collectors.joining("; "))
              + (owed.isEmpty() ? "" : "; not done, owed: " + owed);
    };
  }

  // What a flag asks for stands with its source among the flags; a later date has its own.
  private String referral(ProgrammeResult.Referral referral) {
    boolean ofFlag =
        assessment.flags().stream()
            .anyMatch(
                flag ->
                    flag.rule().equals(referral.rule()) && flag.advice().endsWith(referral.what()));
    String what =
        referral.provisional()
            ? "not settled, to be confirmed now"
            : ofFlag ? "referral" : words.spelled(referral.what());
    String source = " [" + referral.source().replaceFirst(" \\(configured:.*", "") + "]";
    return what
        + ", "
        + words.spelled(referral.due())
        + days(referral.from(), referral.to())
        + (ofFlag ? "" : source);
  }

  /** What was found in a region; what is the same on both sides is one row. */
  public List<Row> rows(Region region) {
    return Stream.of(record.answers(), waiting())
        .flatMap(
            all -> rows(all.stream().filter(one -> isIn(region, one.step())).toList()).stream())
        .toList();
  }

  /** Findings that wait because they contradict what stands. */
  public List<Answer> waiting() {
    return record.waiting().stream()
        .filter(answer -> record.protocol().find(answer.step()).isPresent())
        .toList();
  }

  private boolean waits(Answer answer) {
    return record
        .statement(answer.statement())
        .filter(said -> said.status() == Status.WAITS)
        .isPresent();
  }

  /** What an answer comes to at a glance; a number by the flags that rest on it. */
  public Sign sign(Answer answer) {
    return assessment.abnormal(answer).isPresent() ? Sign.ABNORMAL : words.sign(answer.finding());
  }

  /** How an answer stands to what is expected; empty for a number that no flag rests on. */
  public Optional<Norm> norm(Answer answer) {
    return assessment.abnormal(answer).isPresent()
        ? Optional.of(Norm.ABNORMAL)
        : Optional.ofNullable(words.norm(answer.finding()));
  }

  /** Hours of age at which a finding was said; see {@link Assessment#age}. */
  public Optional<BigDecimal> age(Answer answer) {
    return record.statement(answer.statement()).flatMap(assessment::age);
  }

  // What is measured again and again says little without its age.
  private String aged(Answer answer) {
    boolean matters =
        record.protocol().step(answer.step()).series() && !answer.details().containsKey("age");
    return matters ? age(answer).map(hours -> ", at " + hours + " h").orElse("") : "";
  }

  /** The value or number; a number that is too low or too high with an L or H. */
  public String said(Answer answer) {
    return words.said(answer.finding())
        + assessment.abnormal(answer).map(one -> " " + one.direction().code()).orElse("")
        + aged(answer)
        + (waits(answer) ? " (" + Words.NOT_SETTLED + ")" : "");
  }

  /** Such as {@code left clavicle: crepitus}. */
  public String of(Answer answer) {
    return words.name(answer.step(), answer.side()) + ": " + said(answer);
  }

  /** The findings that are not normal, from head to toe. */
  public List<Row> abnormal() {
    return Stream.of(record.answers(), waiting())
        .flatMap(all -> rows(all.stream().filter(this::isAbnormal).toList()).stream())
        .toList();
  }

  /** Whether nothing is abnormal, to be acted on or open, and every key step was done. */
  public boolean isWell() {
    return abnormal().isEmpty()
        && unsettled().isEmpty()
        && missingKeySteps().isEmpty()
        && !integrity().isAltered()
        && assessment.flags().stream().allMatch(flag -> flag.level() == Level.NOTE);
  }

  private List<Row> rows(List<Answer> answers) {
    Map<String, List<Answer>> alike =
        answers.stream()
            .collect(
                Collectors.groupingBy(
                    answer -> answer.step() + ": " + said(answer),
                    LinkedHashMap::new,
                    Collectors.toList()));
    return alike.values().stream().map(this::row).toList();
  }

  private Row row(List<Answer> alike) {
    Answer first = alike.get(0);
    return new Row(
        sides(first.step(), alike.stream().map(Answer::side).toList()),
        said(first),
        waits(first) ? Sign.UNSURE : sign(first),
        alike.stream().allMatch(Answer::group),
        reviewer(alike));
  }

  /**
   * Who typed or accepted these in a review, or let them stand against what was said before; empty
   * where they stand as they were dictated.
   */
  public String reviewer(List<Answer> answers) {
    Set<Integer> statements = answers.stream().map(Answer::statement).collect(Collectors.toSet());
    Stream<String> made =
        answers.stream()
            .flatMap(answer -> record.statement(answer.statement()).stream())
            .map(RecordedFinding::author);
    Stream<String> settled =
        record
            .events(Event.StatementSettled.class)
            .filter(one -> one.effect() == Effect.STANDS && statements.contains(one.statement()))
            .map(Event.StatementSettled::author);
    return Stream.concat(made, settled)
        .filter(Objects::nonNull)
        .map(PlainText::line)
        .distinct()
        .collect(Collectors.joining(", "));
  }

  private String sides(String step, List<Side> sides) {
    return sides.containsAll(BOTH)
        ? words.step(step) + Words.BOTH_SIDES
        : words.name(step, sides.get(0));
  }

  boolean isIn(Region region, String step) {
    return record.protocol().step(step).region().equals(region.id());
  }

  private boolean isAbnormal(Answer answer) {
    return norm(answer).filter(norm -> norm == Norm.ABNORMAL).isPresent();
  }

  /** Whether anything of a region is abnormal. */
  public boolean isAbnormal(Region region) {
    return rows(region).stream().anyMatch(row -> row.sign() == Sign.ABNORMAL);
  }

  /** Whether something abnormal of a region is on this side, or on no side in particular. */
  public boolean isAbnormal(Region region, Side side) {
    return record.answers().stream()
        .filter(answer -> answer.side() == null || answer.side() == side)
        .anyMatch(answer -> isIn(region, answer.step()) && isAbnormal(answer));
  }

  /** Whether something of a region was not examined on this side, or on no side in particular. */
  public boolean isMissing(Region region, Side side) {
    return record.missing().stream()
        .filter(slot -> slot.side() == null || slot.side() == side)
        .anyMatch(slot -> isIn(region, slot.step()));
  }

  /**
   * Names of what was not said of a region; key steps are marked. What was left out for a reason is
   * among its rows.
   */
  public List<String> missing(Region region) {
    Map<String, List<Side>> missing = new LinkedHashMap<>();
    for (Slot slot : record.missing()) {
      if (isIn(region, slot.step()) && !record.deferred().containsKey(slot)) {
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
   * Such as {@code , because of the right clavicle}: the findings that raised a flag; empty where
   * it rests on what is known of the baby alone.
   */
  public String since(Flag flag) {
    List<Answer> raising =
        Stream.concat(record.answers().stream(), waiting().stream())
            .filter(answer -> flag.steps().contains(answer.step()))
            .filter(answer -> flag.statements().contains(answer.statement()))
            .toList();
    List<String> names = rows(raising).stream().map(Row::name).map(RecordWording::the).toList();
    return names.isEmpty() ? "" : ", because of " + Words.and(names);
  }

  /** One of two sides has an article: {@code the right Barlow}, but {@code murmur}. */
  private static String the(String name) {
    return name.startsWith("right ") || name.startsWith("left ") ? "the " + name : name;
  }

  /** Who dictated; empty where nobody was named. */
  public String dictated() {
    return record.opened() == null || record.opened().author() == null
        ? ""
        : PlainText.line(record.opened().author());
  }

  /** Questions and unsure utterances that nobody has settled. */
  public List<String> unsettled() {
    List<String> lines = new ArrayList<>();
    lines.addAll(questions());
    record.unsure().forEach(heard -> lines.add(seems(heard)));
    return lines.stream().map(PlainText::line).toList();
  }

  private String seems(Utterance heard) {
    String seems = words.seems(heard.offered());
    return "unsure: “" + heard.heard().text() + "”" + (seems.isEmpty() ? "" : ", seems: " + seems);
  }

  /**
   * What must be settled before a signature, or named by the signer: contradictions about key steps
   * and flags that are urgent or worse and rest on what is not settled.
   */
  public List<String> toSettle() {
    Stream<String> contradictions =
        record.contradictions().stream()
            .filter(one -> one.newer() != null && isKey(one.newer().statement().step()))
            .map(one -> words.spelled(one.text()));
    Stream<String> flags =
        assessment.flags().stream()
            .filter(flag -> flag.provisional() && flag.level().compareTo(Level.URGENT) <= 0)
            .map(this::flag);
    return Stream.concat(contradictions, flags).toList();
  }

  private boolean isKey(String step) {
    return record.protocol().find(step).map(Step::key).orElse(false);
  }

  /** What is asked and nobody has answered. */
  public List<String> questions() {
    return record.openQuestions().stream()
        .map(asked -> words.spelled(asked.question().text()))
        .toList();
  }

  /** What was heard unsurely and nobody has decided, in quotes. */
  public List<String> unsure() {
    return record.unsure().stream().map(one -> "\"" + one.heard().text() + "\"").toList();
  }

  public List<String> missingKeySteps() {
    return missing(record.missingKeySteps());
  }

  /** Steps without an answer that are no key steps. */
  public List<String> otherMissingSteps() {
    return missing(
        record.missing().stream()
            .filter(slot -> !record.protocol().step(slot.step()).key())
            .toList());
  }

  /**
   * A missing slot, with the reason it was left out for: {@code left Barlow (deferred: crying)}.
   */
  public String missing(Slot slot) {
    return words.missing(slot, record.deferred());
  }

  /** The same of several, both sides of a step as one. */
  List<String> missing(List<Slot> slots) {
    return CommandReply.names(slots, record, words);
  }

  /** Details that a finding wants. */
  public List<String> missingDetails() {
    return record.missingDetails().stream()
        .map(one -> words.name(one.slot()) + ": " + words.detail(one.slot().step(), one.detail()))
        .toList();
  }

  /** Flags with how soon to act, the most pressing first. */
  public List<String> flags() {
    return assessment.flags().stream().map(this::flag).toList();
  }

  /**
   * Such as {@code URGENT: consider cataract}; one that is not settled says so: {@code URGENT, not
   * settled: …}, {@code URGENT, heard unsurely: left hip: positive — confirm now: …}, {@code
   * URGENT, not settled: heart rate: 30 /min — confirm now: …}.
   */
  public String flag(Flag flag) {
    return level(flag) + ": " + words.spelled(flag.advice());
  }

  /** How soon, in capitals, and why it is not settled where it is not. */
  public String level(Flag flag) {
    String unsure =
        flag.statements().contains(Answer.NO_STATEMENT)
            ? words.seems(
                record.unsure().stream()
                    .flatMap(utterance -> utterance.offered().stream())
                    .filter(offer -> concerns(flag, offer.findings()))
                    .distinct()
                    .toList())
            : "";
    String why = unsure.isEmpty() ? asked(flag) : "heard unsurely: " + unsure;
    return flag.provisional() && !why.isEmpty()
        ? words.level(flag).replace(Words.NOT_SETTLED, why + " — confirm now")
        : words.level(flag);
  }

  private static boolean concerns(Flag flag, List<Finding> findings) {
    return findings.stream().anyMatch(one -> flag.steps().contains(one.step()));
  }

  /** What a question asks about that may raise the flag; empty where none does. */
  private String asked(Flag flag) {
    return record.openQuestions().stream()
        .map(one -> one.question().waiting())
        .filter(waiting -> concerns(flag, waiting))
        .map(words::either)
        .findFirst()
        .map(said -> Words.NOT_SETTLED + ": " + said)
        .orElse("");
  }

  public List<String> gaps() {
    return record.gaps().stream()
        .map(
            gap ->
                "%.0f s not heard from second %.0f: %s"
                    .formatted(gap.seconds(), gap.from(), PlainText.line(gap.reason())))
        .toList();
  }

  /** A line for each measurement; a remark on all of them is said once, at the end. */
  public List<String> sizes() {
    List<Size> sizes = assessment.sizes();
    boolean oneRemark =
        sizes.size() > 1 && sizes.stream().map(Size::remarks).distinct().count() == 1;
    List<String> lines = new ArrayList<>();
    for (Size size : sizes) {
      lines.add(words.step(size.step()) + places(size) + (oneRemark ? "" : remarks(" — ", size)));
    }
    if (oneRemark && !sizes.get(0).remarks().isEmpty()) {
      lines.add(remarks("", sizes.get(0)));
    }
    return lines;
  }

  private String places(Size size) {
    String places =
        size.against().stream()
            .map(
                place ->
                    "%s, z %s (%s)"
                        .formatted(words.centile(place), z(place.z()), standard(place.standard())))
            .collect(Collectors.joining("; "));
    return places.isEmpty() ? "" : ": " + places;
  }

  static String standard(String id) {
    return id.equals("intergrowth-21st") ? "INTERGROWTH-21st" : id.toUpperCase(Locale.ROOT);
  }

  private String remarks(String before, Size size) {
    return size.remarks().isEmpty()
        ? ""
        : before + words.spelled(String.join("; ", size.remarks()));
  }

  private static String z(double z) {
    return BigDecimal.valueOf(z)
        .setScale(2, RoundingMode.HALF_UP)
        .toPlainString()
        .replace('-', '−');
  }

  public List<String> results() {
    return assessment.results().stream()
        .map(result -> Stream.concat(Stream.of(result.text()), result.remarks().stream()))
        .map(parts -> words.spelled(parts.collect(Collectors.joining("; "))))
        .toList();
  }

  public List<String> plan() {
    return assessment.plan().stream().map(this::planned).toList();
  }

  private String planned(PlanItem item) {
    String date = days(item.from(), item.to());
    String due = item.what().endsWith(" " + item.due()) ? "" : ", " + item.due();
    String handled = item.handled() == null ? "" : "; " + handled(item.handled());
    return words.spelled(item.what() + due + date + " — " + item.reason()) + handled;
  }

  /** Such as {@code (2026-03-29 to 2026-04-12)}; empty where no date is known. */
  private static String days(String from, String to) {
    if (from == null) {
      return to == null ? "" : " (by " + day(to) + ")";
    }
    return " (" + day(from) + (to == null || to.equals(from) ? "" : " to " + day(to)) + ")";
  }

  private static String day(String moment) {
    if (moment.length() <= 10) {
      return moment;
    }
    String offset = moment.substring(moment.length() - "+00:00".length());
    String zone = offset.matches("[+-]00:00") || moment.endsWith("Z") ? "" : offset;
    return moment.substring(0, 16).replace('T', ' ') + " UTC" + zone;
  }

  public List<String> needs() {
    return words.needs(assessment.needs());
  }

  public List<String> remarks() {
    return record.remarks().stream().map(Remark::marked).map(PlainText::line).toList();
  }

  public List<String> signatures() {
    return record.signatures().stream().map(this::signed).toList();
  }

  private String signed(Signature signature) {
    if (integrity().isAltered()) {
      return "was %s, %s; this no longer holds".formatted(by(signature), moment(signature.at()));
    }
    String key = signature.isKeyed() ? "; key " + key(signature, integrity()) : "";
    return "%s, %s%s; seal %s"
        .formatted(by(signature), moment(signature.at()), key, signature.seal());
  }

  /** Who answers for it, and whether by a signature or by a name that anybody could give. */
  public static String by(Signature signature) {
    String who = PlainText.line("“" + signature.name() + "”, “" + signature.role() + "”");
    return signature.isKeyed()
        ? "signed by " + who
        : "closed by " + who + " (a name, not a signature)";
  }

  /** A key by its fingerprint, and whose it is as far as is known here. */
  public static String key(Signature signature, Integrity integrity) {
    String owner = integrity.owner(signature);
    return signature.fingerprint()
        + (owner.isEmpty() ? " (not among the keys trusted here)" : " (trusted: " + owner + ")");
  }
}
