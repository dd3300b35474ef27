package tiptoe.clinical;

import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Handover;
import tiptoe.protocol.Caution;
import tiptoe.protocol.Protocol;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/** Says what follows from a set of findings. It reminds and refers; it does not diagnose. */
public final class Assessor {
  private final Protocol protocol;
  private final Rules rules;

  private Assessor(Protocol protocol, Rules rules) {
    this.protocol = protocol;
    this.rules = rules;
  }

  /** The assessor with the rules this project ships, and with what a ward adds. */
  public static Assessor of(Protocol protocol) {
    return new Assessor(protocol, Rules.of(protocol));
  }

  static Assessor of(Rules rules) {
    return new Assessor(Protocol.standard(), rules);
  }

  /**
   * Everything that follows from the findings that stand.
   *
   * @param baby what was stated of the baby; nothing is assumed
   * @param answers the findings; several numbers of one step are taken as measured one after the
   *     other
   * @param examinedAt when the findings were made, which dates count from where the moment of birth
   *     was not stated; null where it is not known
   */
  public Assessment assess(
      Baby baby, List<Answer> answers, Settings settings, ZonedDateTime examinedAt) {
    return assess(baby, answers, List.of(), Handover.of(baby), settings, examinedAt);
  }

  /**
   * The same with the flags of what is not settled. Sizes, results, the plan and what is missing
   * come of what stands alone.
   *
   * @param unsettled what was said and not taken back but does not stand: it waits for an answer or
   *     was heard unsurely. A flag that arises only with some of it is provisional
   */
  Assessment assess(
      Baby baby,
      List<Answer> answers,
      List<Answer> unsettled,
      Handover handover,
      Settings settings,
      ZonedDateTime examinedAt) {
    AssessedBaby standing =
        new AssessedBaby(protocol, baby, answers, settings, examinedAt, Set.of());
    Flags flags = new Flags(protocol, rules, standing);
    AssessedBaby assessed = flags.baby();
    List<PlanItem> plan = new Plan(protocol, rules, assessed, handover).items(flags.flags());
    UnsettledFlags provisional = new UnsettledFlags(protocol, rules);
    List<Flag> raised = provisional.beside(flags.flags(), standing, unsettled);
    return new Assessment(
        raised,
        Stream.concat(
                flags.abnormalNumbers().stream(),
                provisional.abnormalNumbers(standing, unsettled).stream())
            .toList(),
        Sizes.of(assessed),
        new Results(assessed).all(),
        plan,
        new Programme(protocol, rules, raised, plan).results(baby, answers),
        needs(assessed, flags.needs(), plan),
        missing(assessed),
        assessed.timeOfBirth().map(ZonedDateTime::toInstant).orElse(null),
        ruleSets(settings),
        Caution.TEXT);
  }

  /**
   * Everything that follows from a record.
   *
   * @param zone the zone in which dates are counted
   */
  public Assessment assess(ExamRecord record, Settings settings, ZoneId zone) {
    ZonedDateTime examinedAt =
        record.entries().isEmpty() ? null : record.entries().get(0).at().atZone(zone);
    return assess(record, settings, examinedAt);
  }

  /** The same of one whose examination was at a time that is known otherwise. */
  public Assessment assess(ExamRecord record, Settings settings, ZonedDateTime examinedAt) {
    return assess(
        record.baby(),
        record.answers(),
        record.unsettled(),
        Handover.of(record),
        settings,
        examinedAt);
  }

  private List<MissingItem> missing(AssessedBaby baby) {
    return rules.missing().stream()
        .filter(rule -> rule.when().of(baby).isYes())
        .map(Rules.MissingRule::missing)
        .toList();
  }

  private static List<Need> needs(
      AssessedBaby baby, Map<String, Set<String>> ofRules, List<PlanItem> plan) {
    Map<String, Set<String>> needs = new LinkedHashMap<>();
    baby.unreadable().forEach((fact, why) -> add(needs, fact, why));
    if (baby.ageIsAtOdds()) {
      add(
          needs,
          "born-at",
          "it does not fit the age of %.0f h that was stated, which counts until one is put right"
              .formatted(baby.age().orElseThrow()));
    }
    ofRules.forEach((fact, reasons) -> reasons.forEach(reason -> add(needs, fact, reason)));
    boolean sized =
        List.of(SizeMeasure.values()).stream()
            .anyMatch(measure -> Sizes.of(baby, measure).isPresent());
    if (sized && baby.sex().isEmpty()) {
      add(needs, "sex", "size at birth has a standard for girls and one for boys");
    }
    if (sized && baby.gestation().isEmpty()) {
      add(needs, "gestation", "size at birth is judged by gestation");
    }
    if (Sizes.wantsBirthWeight(baby)) {
      add(needs, "birth-weight", "size at birth and weight change are judged by it");
    }
    if (SaturationScreen.of(baby.settings()).fromOneDay()
        && SaturationScreen.outcome(baby).isPresent()
        && baby.age().isEmpty()) {
      add(needs, "age", "the saturation screen is meant for 24 hours of age or later");
    }
    for (String fact : Bilirubin.needs(baby)) {
      add(needs, fact, "the thresholds of bilirubin go by it");
    }
    if (baby.bornAt().isEmpty() && !plan.isEmpty()) {
      add(needs, "born-at", "dates of the plan are counted from birth");
    }
    List<Need> made = new ArrayList<>();
    needs.forEach((fact, reasons) -> made.add(new Need(fact, List.copyOf(reasons))));
    made.sort(Comparator.comparing(Need::fact));
    return made;
  }

  private static void add(Map<String, Set<String>> needs, String fact, String reason) {
    needs.computeIfAbsent(fact, f -> new LinkedHashSet<>()).add(reason);
  }

  private List<String> ruleSets(Settings settings) {
    List<String> sets = new ArrayList<>();
    protocol.local().ifPresent(local -> sets.add("local protocol " + local.title()));
    for (Setting setting : Setting.values()) {
      if ("rules".equals(setting.section())) {
        sets.add(setting.key() + " " + settings.get(setting));
      }
    }
    return sets;
  }
}
