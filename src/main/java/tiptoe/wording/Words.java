package tiptoe.wording;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import org.apache.commons.lang3.StringUtils;
import tiptoe.clinical.Flag;
import tiptoe.clinical.Need;
import tiptoe.clinical.Size;
import tiptoe.exam.Slot;
import tiptoe.finding.BothSides;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.language.Meaning;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Labels;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Units;
import tiptoe.protocol.Value;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.settings.Spelling;

/**
 * What is known by its id, put into words for people, in the chosen units and spelling. What people
 * said or typed is never spelled anew.
 *
 * <p>The number that is kept always stands first, so that a record reads the same wherever it is
 * read; a unit that was chosen otherwise follows in brackets: {@code 3345 g (7 lb 6 oz)}.
 */
public record Words(Protocol protocol, Settings settings) {
  /** Said of what waits to be settled. */
  public static final String NOT_SETTLED = "not settled";

  /** Behind the name of a step. */
  static final String BOTH_SIDES = " (both sides)";

  private static final String DEFERRED = "deferred";

  /** In the units and the spelling that are kept, for what becomes part of a record. */
  public static Words asKept(Protocol protocol) {
    return new Words(protocol, Settings.DEFAULT);
  }

  /** What an unsure utterance seems to say: {@code murmur: none; Barlow (both sides): negative}. */
  public String seems(List<Meaning> offered) {
    return BothSides.together(offered, Words::stated).stream()
        .map(
            place ->
                place.size() > 1
                    ? onBothSides(stated(place.get(0)).orElseThrow())
                    : offered(place.get(0)))
        .collect(Collectors.joining("; "));
  }

  private static Optional<Finding> stated(Meaning offer) {
    return offer instanceof Meaning.States said ? Optional.of(said.statement()) : Optional.empty();
  }

  /** Findings in words, in their order, those that are the same on both sides as one. */
  List<String> together(List<Finding> findings) {
    return BothSides.together(findings, Optional::of).stream()
        .map(place -> place.size() > 1 ? onBothSides(place.get(0)) : of(place.get(0)))
        .toList();
  }

  /** One thing that is offered: {@code left Barlow: negative}, {@code feeding: breast}. */
  public String offered(Meaning offer) {
    return offer instanceof Meaning.Fact fact
        ? stated(fact.id(), fact.value())
        : either(offer.findings());
  }

  /** Findings of which one is meant. */
  String either(List<Finding> findings) {
    return findings.stream().map(this::of).collect(Collectors.joining(" or "));
  }

  public String setting(Setting setting) {
    return settings.get(setting);
  }

  /** Words of ours, which are written in British spelling, in the spelling that was chosen. */
  public String spelled(String british) {
    return Spelling.of(british, settings);
  }

  /** {@code hip-family-history} becomes {@code hip family history}; a fact may have its own. */
  public String label(String id) {
    return spelled(protocol.fact(id).map(Fact::label).orElse(Labels.of(id)));
  }

  /** The same with a capital first letter. */
  public String title(String id) {
    return StringUtils.capitalize(label(id));
  }

  public String region(Region region) {
    return spelled(region.label());
  }

  /** Such as {@code clavicle}. */
  public String step(String id) {
    return spelled(protocol.step(id).label());
  }

  /** Such as {@code skin, tone and cry}. */
  public static String and(List<String> names) {
    int last = names.size() - 1;
    return last < 1
        ? String.join("", names)
        : String.join(", ", names.subList(0, last)) + " and " + names.get(last);
  }

  /**
   * From one day or moment to another: {@code by 2026-03-29}, {@code 2026-03-29 to 2026-04-12};
   * empty where both are null.
   */
  public static String dates(String from, String to) {
    if (from == null) {
      return to == null ? "" : "by " + to;
    }
    return to == null ? "from " + from : from.equals(to) ? from : from + " to " + to;
  }

  /** Such as {@code left clavicle}. */
  public String name(String step, Side side) {
    return spelled(protocol.step(step).name(side));
  }

  /** The same of a place in the checklist. */
  public String name(Slot slot) {
    return name(slot.step(), slot.side());
  }

  /** The same of one that is missing, with the reason it was left out for. */
  public String missing(Slot slot, Map<Slot, String> deferred) {
    return name(slot) + deferred(deferred, List.of(slot));
  }

  /** What is said behind missing slots of one step that were left out; empty where none was. */
  public String deferred(Map<Slot, String> deferred, List<Slot> slots) {
    List<String> reasons = slots.stream().map(deferred::get).filter(Objects::nonNull).toList();
    String said =
        reasons.stream()
            .filter(reason -> !reason.isEmpty() && !reason.equals(DEFERRED))
            .map(Labels::of)
            .distinct()
            .collect(Collectors.joining(", "));
    return reasons.isEmpty() ? "" : " (" + DEFERRED + (said.isEmpty() ? ")" : ": " + said + ")");
  }

  /** Such as {@code grade} of a murmur. */
  public String detail(String step, String detail) {
    return spelled(protocol.step(step).detail(detail).map(Detail::label).orElse(Labels.of(detail)));
  }

  /** Such as {@code left clavicle: crepitus} or {@code weight: 3420 g}. */
  public String of(Finding finding) {
    return name(finding.step(), finding.side()) + ": " + said(finding);
  }

  /** Such as {@code clavicle (both sides): crepitus}. */
  String onBothSides(Finding finding) {
    return step(finding.step()) + BOTH_SIDES + ": " + said(finding);
  }

  /** The value or number with its details: {@code present, grade 2, systolic}. */
  public String said(Finding finding) {
    Step step = protocol.step(finding.step());
    if (Value.NOT_EXAMINED.equals(finding.value())) {
      String reason = finding.details().get("reason");
      return spelled("not examined") + (reason == null ? "" : ", because " + Labels.of(reason));
    }
    List<String> parts = new ArrayList<>();
    parts.add(
        finding.quantity() != null ? quantity(finding.quantity()) : value(step, finding.value()));
    finding.details().forEach((id, value) -> parts.add(detail(step, id, value)));
    // Where there is but one thing to find, the normal value says already that it was not found.
    if (step.values().stream().filter(value -> value.norm() != Norm.NORMAL).count() > 1) {
      finding.denied().forEach(id -> parts.add("no " + value(step, id)));
    }
    return String.join(", ", parts);
  }

  private String value(Step step, String id) {
    return spelled(step.value(id).map(Value::label).orElse(Labels.of(id)));
  }

  private String detail(Step step, String id, String value) {
    Detail detail = step.detail(id).orElse(null);
    if (detail == null) {
      // A reason is in someone's own words.
      return Labels.of(id) + " " + Labels.of(value).replace(",", " and ");
    }
    return detail.measure() == null || detail.measure().unit().equals("1")
        ? spelled(Labels.of(id) + " " + Labels.of(value).replace(",", " and "))
        : label(id) + " " + measured(value, detail.measure().unit());
  }

  /** The quantity as kept, and in the unit that was chosen where that is another. */
  public String quantity(Quantity quantity) {
    String chosen = chosen(quantity.number(), quantity.unit());
    return chosen == null ? quantity.toString() : quantity + " (" + chosen + ")";
  }

  private String measured(String number, String unit) {
    String chosen =
        number.matches("[0-9]+(\\.[0-9]+)?") ? chosen(Double.parseDouble(number), unit) : null;
    return number + " " + unit + (chosen == null ? "" : " (" + chosen + ")");
  }

  private String chosen(double number, String unit) {
    return switch (unit) {
      case "g" -> settings.is(Setting.WEIGHT_UNIT, "lb") ? Units.poundsAndOunces(number) : null;
      case "cm" ->
          settings.is(Setting.LENGTH_UNIT, "in")
              ? String.format(Locale.ROOT, "%.1f in", Units.inches(number))
              : null;
      case "°C" ->
          settings.is(Setting.TEMPERATURE_UNIT, "fahrenheit")
              ? String.format(Locale.ROOT, "%.1f °F", Units.fahrenheit(number))
              : null;
      default -> null;
    };
  }

  /** What a finding comes to at a glance. */
  public Sign sign(Finding finding) {
    if (Value.NOT_EXAMINED.equals(finding.value())) {
      return Sign.SKIPPED;
    }
    Norm norm = norm(finding);
    return norm == Norm.ABNORMAL ? Sign.ABNORMAL : norm == Norm.BENIGN ? Sign.BENIGN : Sign.DONE;
  }

  /** How a finding stands to what is expected; null for a number and for what was not examined. */
  Norm norm(Finding finding) {
    return finding.value() == null
        ? null
        : protocol.step(finding.step()).value(finding.value()).map(Value::norm).orElse(null);
  }

  /** What was stated of the baby, without its name: {@code 18 h}. */
  public String fact(String id, String value) {
    Fact fact = protocol.fact(id).orElse(null);
    if (fact == null) {
      return label(value);
    }
    return switch (fact.kind()) {
      case TEXT, IDENTITY -> value;
      case MOMENT -> value.replace('T', ' ');
      case CHOICE -> spelled(fact.label(value));
      default -> measured(value, fact.measure().unit());
    };
  }

  /** The same with its name: {@code age: 18 h}. */
  public String stated(String id, String value) {
    return label(id) + ": " + fact(id, value);
  }

  /** How soon, in capitals, and whether it is settled: {@code URGENT, not settled}. */
  public String level(Flag flag) {
    return flag.level().id().toUpperCase(Locale.ROOT)
        + (flag.provisional() ? ", " + NOT_SETTLED : "");
  }

  /**
   * Such as {@code age: jaundice in the first 24 hours is urgent}; facts that decide the same are
   * named together.
   */
  public List<String> needs(List<Need> needs) {
    return needs.stream()
        .collect(Collectors.groupingBy(Need::reasons, LinkedHashMap::new, Collectors.toList()))
        .entrySet()
        .stream()
        .map(
            alike ->
                alike.getValue().stream()
                        .map(need -> label(need.fact()))
                        .collect(Collectors.joining(", "))
                    + ": "
                    + spelled(String.join("; ", alike.getKey())))
        .toList();
  }

  /** Such as {@code weight 3000 g}. */
  public String measured(Size size) {
    return step(size.step()) + " " + quantity(new Quantity(size.number(), size.unit()));
  }

  /** Such as {@code 25th centile}. */
  public String centile(Size.Place place) {
    return place.centileText() + spelled(" centile");
  }
}
