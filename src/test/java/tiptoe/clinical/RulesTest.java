package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.finding.Finding;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Settings;

/** The rules file as a whole: every value has its level, every id resolves, no diagnosis. */
class RulesTest {
  private static final Protocol PROTOCOL = Protocol.standard();

  // The level of a finding by itself, nothing else known, and for urgent ones by when. Decided
  // value
  // by value; sources as beside each rule in rules.yaml.
  private static final Map<String, String> LEVELS =
      Map.of(
          "emergency now",
          """
          alertness=unresponsive scalp=subgaleal-swelling breathing=gasping breathing=apnoea
          umbilical-skin=redness genital-appearance=ambiguous anus=not-patent movements=seizure
          """,
          "urgent now",
          """
          colour=pale colour=central-cyanosis alertness=lethargic cry=absent skin=vesicles
          anterior-fontanelle=bulging anterior-fontanelle=tense breathing=retractions
          breathing=nasal-flaring breathing=grunting breath-sounds=stridor breath-sounds=reduced
          heart-sounds=muffled heart-sounds=gallop brachial-pulse=weak brachial-pulse=absent
          femoral-pulse=weak femoral-pulse=absent brachio-femoral=delayed abdomen=scaphoid
          abdomen=tense cord-stump=bleeding lumbosacral=leaking movements=jittery
          """,
          "urgent within 6 hours",
          """
          colour=jaundiced jaundice=present
          """,
          "urgent today",
          """
          posture=extended posture=frog-leg colour=mottled alertness=irritable cry=weak
          cry=high-pitched skin=pustules skin=petechiae sutures=widely-split
          anterior-fontanelle=sunken red-reflex=absent red-reflex=white red-reflex=dull
          red-reflex=asymmetric eyes=discharge eyes=cloudy-cornea suck=absent
          breath-sounds=crackles breath-sounds=wheeze precordium=active precordium=thrill
          precordium=apex-right brachial-pulse=bounding femoral-pulse=bounding abdomen=distended
          cord-stump=offensive umbilical-skin=discharge barlow=positive ortolani=positive
          spine=mass lumbosacral=sinus ventral-tone=floppy penis=small labia=fused
          labia=large-clitoris tone=low tone=high moro=asymmetric moro=absent
          """,
          "arrange",
          """
          posture=asymmetric colour=plethoric cry=hoarse appearance=dysmorphic skin=laceration
          skin=port-wine-stain head-shape=microcephalic head-shape=macrocephalic scalp=laceration
          sutures=ridged anterior-fontanelle=not-palpable anterior-fontanelle=large
          posterior-fontanelle=large eyes=coloboma eyes=swollen-lids face=facial-palsy jaw=small
          ear-form=malformed ear-form=no-canal nostrils=blocked palate=cleft
          palate=submucous-cleft lips=cleft-lip suck=weak tongue=large gums=natal-tooth
          neck-movement=torticollis neck-movement=limited neck=mass neck=webbing neck=sinus
          clavicle=crepitus clavicle=step-off clavicle=swelling clavicle=fracture
          chest-shape=asymmetric rhythm=irregular murmur=present abdominal-mass=present
          liver=enlarged spleen=enlarged kidneys=enlarged fingers=extra-digit fingers=fused-digits
          fingers=missing-digit palmar-grasp=weak palmar-grasp=absent arm-movement=reduced
          toes=extra-digit toes=fused-digits toes=missing-digit plantar-grasp=weak
          plantar-grasp=absent foot-position=club-foot foot-position=rocker-bottom
          hip-abduction=limited knee-height=unequal spine=curved lumbosacral=hair-tuft
          lumbosacral=haemangioma lumbosacral=skin-tag testis=undescended testis=inguinal
          penis=hypospadias penis=chordee inguinal-hernia=present anus=displaced rooting=absent
          """,
          "note",
          """
          skin=bruising skin=meconium-stained skin=haemangioma skin=cafe-au-lait
          head-shape=asymmetric scalp=caput scalp=cephalohaematoma scalp=bruising
          eye-spacing=hypotelorism eye-spacing=hypertelorism face=asymmetric ear-position=low-set
          ear-form=pit ear-form=tag palate=high-arched tongue=tongue-tie
          chest-shape=pectus-excavatum chest-shape=pectus-carinatum nipples=wide-spaced
          nipples=supernumerary cord-vessels=two cord-stump=moist palm-creases=single-crease
          sole-creases=absent foot-position=metatarsus-adductus lumbosacral=dimple stepping=absent
          """);

  private static Answer answer(Step step, Value value) {
    Side side = step.sided() ? Side.LEFT : null;
    return new Answer(Finding.of(step.id(), side, value.id()), 7);
  }

  private static Assessment alone(Step step, Value value) {
    return Assessor.of(Protocol.standard())
        .assess(Baby.UNKNOWN, List.of(answer(step, value)), Settings.DEFAULT, Bedside.NOW);
  }

  @Test
  void everyAbnormalValueRaisesOneFlagOfItsLevel() {
    Map<String, String> levels = new TreeMap<>();
    LEVELS.forEach(
        (level, values) -> List.of(values.trim().split("\\s+")).forEach(v -> levels.put(v, level)));
    Set<String> unused = new TreeSet<>(levels.keySet());
    PROTOCOL
        .steps()
        .forEach(
            step -> {
              for (Value value : step.values()) {
                String name = step.id() + "=" + value.id();
                List<Flag> flags = alone(step, value).flags();
                if (value.norm() != Norm.ABNORMAL) {
                  assertEquals(List.of(), flags, name);
                  continue;
                }
                assertEquals(1, flags.size(), name + ": " + flags);
                Flag flag = flags.get(0);
                assertEquals(levels.get(name), levelOf(flag), name);
                assertNotEquals(Flags.GENERAL, flag.rule(), name);
                assertEquals(List.of(step.id()), flag.steps(), name);
                assertEquals(List.of(7), flag.statements(), name);
                assertEquals(step.sided() ? List.of(Side.LEFT) : List.of(), flag.sides());
                unused.remove(name);
              }
            });
    assertEquals(Set.of(), unused, "values that the protocol does not have");
  }

  private static String levelOf(Flag flag) {
    String id = flag.level().id();
    return Set.of(Level.EMERGENCY, Level.URGENT).contains(flag.level())
        ? id + " " + flag.when()
        : id;
  }

  @Test
  void whatWasNotExaminedRaisesNothing() {
    List<Answer> answers = new ArrayList<>();
    PROTOCOL
        .steps()
        .forEach(
            step -> {
              for (Side side : step.sided() ? Side.values() : new Side[] {null}) {
                answers.add(
                    new Answer(
                        Finding.of(step.id(), side, Value.NOT_EXAMINED)
                            .withDetails(Map.of("reason", "in a cast")),
                        1));
              }
            });
    Assessment assessment =
        Assessor.of(Protocol.standard())
            .assess(Baby.UNKNOWN, answers, Settings.DEFAULT, Bedside.NOW);
    assertEquals(List.of(), assessment.flags());
    assertEquals(List.of(), assessment.results());
    assertEquals(List.of(), assessment.missing());
    assertEquals(List.of(), assessment.sizes());
  }

  @Test
  void everyRuleNamesItsSourceAndSaysWhatToDo() {
    for (Rules.FlagRule rule : Rules.standard().flags()) {
      assertFalse(rule.source().isBlank(), rule.id());
      assertFalse(rule.advice().isBlank(), rule.id());
      assertFalse(rule.actBy().isBlank(), rule.id());
      assertTrue(rule.id().matches("[a-z0-9-]+"), rule.id());
    }
    for (Rules.PlanRule rule : Rules.standard().plan()) {
      assertFalse(rule.source().isBlank(), rule.id());
      assertFalse(rule.reason().isBlank(), rule.id());
    }
  }

  @Test
  void rulesConsiderAndReferAndNeverDiagnose() {
    Pattern diagnosis =
        Pattern.compile("\\b(diagnos|confirms|this is|has a |suffers|proves|certainly)");
    for (Rules.FlagRule rule : Rules.standard().flags()) {
      String text = rule.advice() + " " + rule.consider();
      assertFalse(diagnosis.matcher(text).find(), rule.id() + ": " + text);
    }
  }

  @Test
  void anEmergencyIsNowAndAnUrgentFlagIsNowOrToday() {
    for (Rules.FlagRule rule : Rules.standard().flags()) {
      if (rule.level() == Level.EMERGENCY) {
        assertEquals("now", rule.actBy(), rule.id());
      } else if (rule.level() == Level.URGENT) {
        assertTrue(
            Set.of("now", "within 2 hours", "within 6 hours", "today").contains(rule.actBy()),
            rule.id());
      }
    }
    Map<String, String> usual =
        Rules.standard().flags().stream()
            .filter(rule -> Set.of("murmur", "club-foot").contains(rule.id()))
            .collect(Collectors.toMap(Rules.FlagRule::id, Rules.FlagRule::actBy));
    assertEquals(
        Map.of("murmur", "within 24 hours or before discharge", "club-foot", "before discharge"),
        usual);
  }

  @Test
  void whatMakesAFlagSuperfluousIsAtLeastAsPressing() {
    Map<String, Rules.FlagRule> byId =
        Rules.standard().flags().stream()
            .collect(Collectors.toMap(Rules.FlagRule::id, rule -> rule));
    for (Rules.FlagRule rule : Rules.standard().flags()) {
      for (String lesser : rule.insteadOf()) {
        assertTrue(rule.level().compareTo(byId.get(lesser).level()) <= 0, rule.id());
      }
    }
  }

  private static final String FLAG = "level: note, advice: look, source: practice";

  // A rule file with one mistake in it: the message names the rule, what was expected and found.
  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      textBlock =
          """
          when: mroo=absent ~ in rule r: expected a step, fact, figure or setting, found mroo=absent
          when: moro=gone ~ in rule r: expected a value of step moro, found gone
          when: moro=absent|gone ~ in rule r: expected a value of step moro, found gone
          when: moro>3 ~ in rule r: expected = for step moro, found >
          when: both moro=absent ~ in rule r: expected a step with sides, found moro
          when: murmur.loud=yes ~ in rule r: expected a detail of step murmur, found loud
          when: murmur.timing=slow ~ in rule r: expected a value of murmur.timing, found slow
          when: murmur.timing>2 ~ in rule r: expected = for murmur.timing, found >
          when: moro absent ~ in rule r: expected a condition such as moro=absent, found moro absent
          when: mroo ~ in rule r: expected a step, found mroo in mroo
          when: both sex=girl ~ in rule r: expected a step, found sex in both sex=girl
          when: sex.size=girl ~ in rule r: expected a step, found sex in sex.size=girl
          when: hip-ultrasound=mine ~ in rule r: expected a choice of hip-ultrasound, found mine
          when: hip-ultrasound>uk ~ in rule r: expected a choice of hip-ultrasound, found uk
          when: sex=tall ~ in rule r: expected = and a value of fact sex, found =tall
          when: sex>girl ~ in rule r: expected = and a value of fact sex, found >girl
          when: age<24 ~ in rule r: expected asks beside a condition on age
          when: sex=girl ~ in rule r: expected asks beside a condition on sex
          when: gestation<37+0 ~ in rule r: expected asks beside a condition on gestation
          when: hours-without-urine>3 ~ in rule r: expected asks beside a condition on age
          when: hours-without-meconium>3 ~ in rule r: expected asks beside a condition on age
          when: {some: [moro=absent]} ~ in rule r: expected a condition, found some
          when: {any: []} ~ in rule r: expected a list of conditions, found []
          when: {any: moro=absent} ~ in rule r: expected a list of conditions, found "moro=absent"
          when: {any: [moro=absent], all: [moro=absent]} ~ in rule r: expected no all in a condition
          when: {check: nothing} ~ in rule r: expected a known check, found nothing
          when: {raised: r} ~ in rule r: expected the id of an earlier flag, found r
          when: {} ~ in rule r: expected a condition, found nothing
          when: moro=absent, instead-of: [q] ~ in rule r: expected the id of a flag, found q
          when: moro=absent, steps: [q] ~ in rule r: expected a step id, found q
          when: moro=absent, unless: [q] ~ in rule r: expected no unless in the rule
          """)
  void namesTheRuleAndTheMistake(String rest, String message) {
    String yaml = "flags: [{id: r, " + FLAG + ", " + rest + "}]";
    assertEquals(message, problem(yaml));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      textBlock =
          """
          flags: [{id: r, when: moro=absent, level: soon, advice: look, source: s}] ~ in rule r: expected emergency, urgent, arrange or note, found soon
          flags: [{id: r, when: moro=absent, level: note, source: s}] ~ in rule r: expected text for advice
          flags: [{when: moro=absent}] ~ expected text for id
          flags: [{id: r}, {id: r}] ~ expected unique rule ids, found r twice
          rules: [] ~ expected no rules in the file
          missing: [{step: murmur, detail: x, when: moro=absent, reason: y}] ~ in rule murmur: expected a detail of step murmur, found x
          missing: [{step: mroo, when: moro=absent, reason: y}] ~ in rule mroo: expected a step id, found mroo
          missing: [{step: moro, when: moro=absent, why: y}] ~ in rule moro: expected no why in the rule
          plan: [{id: p, due: soon, what: x, reason: y, source: z}] ~ in rule p: expected a time such as at 2 weeks of age, found soon
          plan: [{id: p, due: in 1 hour, when: {raised: q}, what: x, reason: y, source: z}] ~ in rule p: expected the id of an earlier flag, found q
          plan: [{id: p, due: in 1 hour, by: me, what: x, reason: y, source: z}] ~ in rule p: expected no by in the rule
          nothing-to-raise: [moro=gone] ~ in rule nothing-to-raise: expected a value of step moro, found gone
          """)
  void namesTheMistakeElsewhereInTheFile(String yaml, String message) {
    assertEquals(message, problem(yaml));
  }

  private static String problem(String yaml) {
    return assertThrows(IllegalArgumentException.class, () -> RulesReader.read(yaml, PROTOCOL))
        .getMessage();
  }

  private static Rules read(String yaml) throws IOException {
    return RulesReader.read(yaml, PROTOCOL);
  }

  // What each kind of condition means, on a rule of its own.
  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      textBlock =
          """
          tone ~ ~ ~ false
          tone ~ ~ tone normal ~ true
          temperature ~ ~ temperature 37 °C ~ true
          tone=low|high ~ ~ tone high ~ true
          tone=low|high ~ ~ tone normal ~ false
          both barlow=positive ~ ~ barlow.left positive ~ false
          both barlow=positive ~ ~ barlow.left positive; barlow.right positive ~ true
          both barlow=positive ~ ~ barlow.left positive; barlow.right negative ~ false
          temperature<37 ~ ~ temperature 36.9 °C ~ true
          temperature<37 ~ ~ temperature 37 °C ~ false
          temperature<=37 ~ ~ temperature 37 °C ~ true
          temperature<=37 ~ ~ temperature 37.1 °C ~ false
          temperature=37 ~ ~ temperature 37 °C ~ true
          temperature=37 ~ ~ temperature 37.1 °C ~ false
          temperature>=37 ~ ~ temperature 37 °C ~ true
          temperature>=37 ~ ~ temperature 36.9 °C ~ false
          temperature>37 ~ ~ temperature 37.1 °C ~ true
          temperature>37 ~ ~ temperature 37 °C ~ false
          murmur.place ~ ~ murmur present ~ false
          murmur.place ~ ~ murmur present place=apex ~ true
          murmur.place=apex ~ ~ murmur present place=aortic-area,apex ~ true
          murmur.place=apex ~ ~ murmur present place=aortic-area ~ false
          murmur.grade>2 ~ ~ murmur present grade=3 ~ true
          murmur.grade>2 ~ ~ murmur present grade=loud ~ false
          murmur.grade<2 ~ ~ murmur present grade=loud ~ false
          tone ~ ~ tone not-examined ~ true
          age<24 ~ age=23 ~ ~ true
          age<24 ~ age=24 ~ ~ false
          age<24 ~ ~ ~ false
          gestation<37+0 ~ gestation=36+6 ~ ~ true
          gestation<37+0 ~ gestation=37+0 ~ ~ false
          sex=girl|boy ~ sex=boy ~ ~ true
          sex=girl|boy ~ sex=undetermined ~ ~ false
          multiple=yes ~ multiple=yes ~ ~ true
          birth-mode=forceps|vacuum ~ birth-mode=vacuum ~ ~ true
          weight-loss>5 ~ birth-weight=1000 ~ weight 949 g ~ true
          weight-loss>5 ~ birth-weight=1000 ~ weight 950 g ~ false
          size-standard=intergrowth-21st ~ ~ ~ true
          size-standard=who ~ ~ ~ false
          {not: tone=low} ~ ~ ~ true
          {not: tone=low} ~ ~ tone low ~ false
          {not: age<24} ~ ~ ~ false
          {any: [tone=low, age<24]} ~ ~ tone low ~ true
          {any: [tone=low, age<24]} ~ age=2 ~ ~ true
          {all: [tone=low, age<24]} ~ age=2 ~ ~ false
          {all: [tone=low, age<24]} ~ age=2 ~ tone low ~ true
          {at-least: 2, of: [tone=low, moro=absent, cry=weak]} ~ ~ tone low; cry weak ~ true
          {at-least: 2, of: [tone=low, moro=absent, cry=weak]} ~ ~ tone low; cry strong ~ false
          """)
  void aConditionHoldsOrNot(String when, String baby, String findings, boolean holds)
      throws IOException {
    Rules rules = read("flags: [{id: r, asks: q, when: " + when + ", " + FLAG + "}]");
    Assessment assessment =
        Assessor.of(rules)
            .assess(Bedside.baby(baby), Bedside.answers(findings), Settings.DEFAULT, Bedside.NOW);
    assertEquals(
        holds, assessment.flags().stream().anyMatch(flag -> flag.rule().equals("r")), when);
  }

  // What was not stated is asked only where it decides.
  @ParameterizedTest
  @CsvSource(
      delimiter = '~',
      textBlock =
          """
          age<24 ~ ~ age
          {any: [tone=low, age<24]} ~ ~ age
          {any: [tone=low, age<24]} ~ tone low ~
          {all: [tone=low, age<24]} ~ ~
          {all: [tone=low, age<24]} ~ tone low ~ age
          {all: [sex=girl, gestation<37+0]} ~ ~ gestation sex
          {at-least: 2, of: [age<24, sex=girl, tone=low]} ~ tone low ~ age sex
          {at-least: 3, of: [age<24, sex=girl, tone=low]} ~ ~
          {not: {all: [tone=low, age<24]}} ~ tone low ~ age
          """)
  void asksForWhatDecides(String when, String findings, String facts) throws IOException {
    Rules rules = read("flags: [{id: r, asks: q, when: " + when + ", " + FLAG + "}]");
    Assessment assessment =
        Assessor.of(rules)
            .assess(Baby.UNKNOWN, Bedside.answers(findings), Settings.DEFAULT, Bedside.NOW);
    assertEquals(
        facts == null ? "" : facts,
        String.join(" ", assessment.needs().stream().map(Need::fact).toList()));
  }

  @Test
  void readsWhatIsMissingAndPlanned() throws IOException {
    Rules rules =
        read(
            """
            missing: [{step: moro, when: tone=low, reason: why}]
            plan:
              - {id: a, due: in 2 hours, when: tone=low, what: do, reason: why, source: s}
              - {id: b, due: at 3 days of age, what: do, reason: why, source: s}
            nothing-to-raise: [cry=weak]
            """);
    Assessment assessment =
        Assessor.of(rules)
            .assess(
                Bedside.baby("age=1"),
                Bedside.answers("tone low; cry weak"),
                Settings.DEFAULT,
                Bedside.NOW);
    assertEquals(List.of(new MissingItem("moro", null, "why")), assessment.missing());
    assertEquals(
        List.of(
            new PlanItem(
                "a",
                "do",
                "in 2 hours",
                "2026-11-25T12:30:00+00:00",
                "2026-11-25T12:30:00+00:00",
                "why",
                "s",
                null),
            new PlanItem(
                "b", "do", "at 3 days of age", "2026-11-28", "2026-11-28", "why", "s", null)),
        assessment.plan());
    assertEquals("note other-abnormal", Bedside.flags(assessment));
    assertEquals(List.of("tone"), assessment.flags().get(0).steps());
  }

  @ParameterizedTest
  @CsvSource({
    "in 2 weeks of age",
    "at 2 weeks",
    "by 2 to 3 weeks of age",
    "from 2 to 3 weeks of age",
    "in 2 to 3 hours",
    "at two weeks of age",
    "at 2 years of age",
  })
  void aTimeOfAnotherFormIsRefused(String due) {
    assertEquals(
        "expected a time such as at 2 weeks of age, found " + due,
        assertThrows(IllegalArgumentException.class, () -> Due.parse(due)).getMessage());
  }

  @Test
  void theShippedFileReadsTheSameAgain() {
    Rules again = RulesReader.readShipped();
    assertEquals(
        Rules.standard().flags().stream().map(RulesTest::shown).toList(),
        again.flags().stream().map(RulesTest::shown).toList());
    String findings =
        "anus not-patent; clavicle.left fracture; lumbosacral dimple base-visible=yes size=3"
            + " from-anus=2; apgar-5 5; saturation-foot 88";
    Assessment assessment =
        Assessor.of(again)
            .assess(
                Bedside.baby("age=18 presentation=breech"),
                Bedside.answers(findings),
                Settings.DEFAULT,
                Bedside.NOW);
    assertEquals(Bedside.assess("age=18 presentation=breech", findings), assessment);
    assertEquals(
        "emergency anus-not-patent, urgent saturation-screen-failed-2025, arrange hip-risk-nipe,"
            + " arrange clavicle-injury, note apgar-low",
        Bedside.flags(assessment));
  }

  private static String shown(Rules.FlagRule rule) {
    return String.join(
        " ", rule.id(), rule.level().id(), rule.actBy(), rule.advice(), rule.source());
  }

  @Test
  void aLaterFlagCanRestOnAnEarlierOne() throws IOException {
    Rules rules =
        read(
            "flags: [{id: a, when: tone=low, "
                + FLAG
                + "}, {id: b, when: {raised: a}, instead-of: [a], steps: [moro], "
                + FLAG
                + "}]");
    Assessment assessment =
        Assessor.of(rules)
            .assess(Baby.UNKNOWN, Bedside.answers("tone low"), Settings.DEFAULT, Bedside.NOW);
    assertEquals("note b", Bedside.flags(assessment));
    assertEquals(List.of("tone"), assessment.flags().get(0).steps());
    assertEquals(List.of(1), assessment.flags().get(0).statements());
  }
}
