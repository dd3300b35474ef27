package tiptoe.wording;

import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.Command;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/** Words the questions, short enough to be read at a glance from the cot. */
public final class QuestionWording {
  private static final DateTimeFormatter MOMENT =
      DateTimeFormatter.ofPattern("d MMMM uuuu 'at' HH:mm", Locale.UK);

  private final Protocol protocol;
  private final Words findings;

  public QuestionWording(Protocol protocol) {
    this.protocol = protocol;
    this.findings = Words.asKept(protocol);
  }

  /** The words of a question that comes up; see {@link tiptoe.exam.QuestionText}. */
  public static String of(Event.QuestionAsked asked, ExamRecord record) {
    QuestionWording wording = new QuestionWording(record.protocol());
    Question question = asked.question();
    if (asked.fact() != null && question.kind() != Question.Kind.FACT) {
      return record
          .baby()
          .fact(asked.fact())
          .map(before -> wording.otherFact(asked.fact(), before, asked.value()))
          .orElseGet(() -> wording.otherAge(record, asked.fact(), asked.value()));
    }
    return question.kind() == Question.Kind.CONTRADICTION && question.against() == null
        ? wording.otherSex(question.about(), record.baby().sex().orElseThrow())
        : wording.of(question);
  }

  /** The words of a question about findings alone. */
  public String of(Question question) {
    Finding about = question.about();
    return switch (question.kind()) {
      case SIDE -> findings.of(about) + " — left, right or both?";
      case DETAIL -> detail(about, question.detail());
      case NUMBER ->
          about == null
              ? fact(question.detail(), question.heard())
              : "heard " + findings.of(about) + " — say " + number(about);
      case STEP -> heard(question.meant()) + step(question.steps());
      case FACT -> readBack(question.detail(), question.heard());
      case COMMAND -> command(Command.of(question.detail()));
      case CONTRADICTION -> contradiction(about, question.against());
    };
  }

  // A glucose that can be, and is asked about, may be in mg/dL.
  private String number(Finding about) {
    Measure measure = protocol.step(about.step()).measure();
    boolean otherUnit =
        measure.unit().equals("mmol/L") && measure.plausible(about.quantity().number());
    return otherUnit ? "it again with its unit" : "the number again";
  }

  private String detail(Finding about, String detail) {
    String step = protocol.step(about.step()).label();
    return switch (detail) {
      case Detail.SIDE -> findings.of(about) + " — which side?";
      case "palpated" -> step + " — felt with a finger?";
      case "base-visible" -> "dimple — base visible?";
      case "radiation" -> step + " — does it radiate, and where to?";
      case "place" -> step + " — where is it loudest?";
      default -> findings.of(about) + " — " + Labels.of(detail) + "?";
    };
  }

  private String fact(String id, String heard) {
    if (heard.matches("day \\d+")) {
      return heard + " is counted from 0 or from 1 — how many hours old?";
    }
    return protocol.problem(id, heard).orElse("heard " + heard + " for " + id) + " — say it again";
  }

  private String readBack(String id, String value) {
    String name = id.equals("born-at") ? "born on " : findings.label(id) + ": ";
    return name + said(id, value) + " — yes or no?";
  }

  private static String command(Command command) {
    String what =
        switch (command) {
          case PAUSE -> "pause the recording";
          case RESUME -> "carry on recording";
          case STRIKE -> "cross out what was said last";
          default -> Labels.of(command.id());
        };
    return what + " — yes or no?";
  }

  private String heard(List<Finding> meant) {
    return meant.stream()
        .findFirst()
        .map(one -> "heard " + said(protocol.step(one.step()), one, false) + " — ")
        .orElse("");
  }

  private String step(List<String> candidates) {
    String names =
        candidates.stream()
            .map(id -> protocol.step(id).label())
            .collect(Collectors.joining(" or "));
    return switch (candidates.size()) {
      case 0 -> "which part is that about?";
      case 1 -> names + " — say it in full";
      default -> "which is meant: " + names + "?";
    };
  }

  private String contradiction(Finding newer, Finding older) {
    Step step = protocol.step(newer.step());
    boolean across = step.sided() && older.side() != newer.side();
    return "%s: first %s, then %s; keep the first or the second?"
        .formatted(
            across ? step.label() : step.name(newer.side()),
            said(step, older, across),
            said(step, newer, across));
  }

  /** {@code positive}, {@code right present (symmetric yes)}. */
  private static String said(Step step, Finding finding, boolean withSide) {
    String value = finding.value();
    String what =
        finding.quantity() != null
            ? finding.quantity().toString()
            : step.value(value).map(Value::label).orElseGet(() -> Labels.of(value));
    String details =
        finding.details().entrySet().stream()
            .map(detail -> detail(step, detail))
            .collect(Collectors.joining(", "));
    return (withSide ? finding.side().id() + " " : "")
        + what
        + (details.isEmpty() ? "" : " (" + details + ")");
  }

  private static String detail(Step step, Map.Entry<String, String> said) {
    String id = said.getKey();
    String label = step.detail(id).map(Detail::label).orElseGet(() -> Labels.of(id));
    return label + " " + Labels.of(said.getValue()).replace(",", ", ");
  }

  private String otherSex(Finding about, String sex) {
    return protocol.step(about.step()).label()
        + " was stated, but this baby is a "
        + sex
        + "; is that right, yes or no?";
  }

  // Age and moment of birth are the only facts that can contradict each other.
  private String otherAge(ExamRecord record, String fact, String value) {
    String other = fact.equals("age") ? "born-at" : "age";
    return "age and time of birth do not fit: first %s, then %s; keep the first or the second?"
        .formatted(
            ageOrBirth(other, record.baby().fact(other).orElseThrow()), ageOrBirth(fact, value));
  }

  private String ageOrBirth(String fact, String value) {
    return (fact.equals("age") ? "age " : "born on ") + said(fact, value);
  }

  private String otherFact(String fact, String before, String now) {
    String name = fact.equals("born-at") ? "time of birth" : findings.label(fact);
    return "%s: first %s, then %s; is it %3$s, yes or no?"
        .formatted(name, said(fact, before), said(fact, now));
  }

  /** As it is said: a moment without its letters, a number with its unit. */
  private String said(String fact, String value) {
    boolean moment = protocol.fact(fact).filter(one -> one.kind() == Fact.Kind.MOMENT).isPresent();
    return moment ? MOMENT.format(Fact.moment(value, null)) : findings.fact(fact, value);
  }
}
