package tiptoe.clinical;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import net.jqwik.api.Arbitraries;
import net.jqwik.api.Arbitrary;
import net.jqwik.api.Combinators;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Provide;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.exam.journal.EventLines;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.wording.AssessmentWording;
import tiptoe.wording.Words;

/** Whatever the findings are, an assessment comes out that does not contradict itself. */
class AnyFindingsTest {
  private static final Protocol PROTOCOL = Protocol.standard();
  private static final List<Step> STEPS = PROTOCOL.steps().toList();

  @Provide
  Arbitrary<List<Answer>> findings() {
    return Arbitraries.of(STEPS)
        .flatMap(AnyFindingsTest::answer)
        .list()
        .ofMaxSize(40)
        .map(
            answers -> {
              List<Answer> numbered = new ArrayList<>();
              for (Answer a : answers) {
                numbered.add(new Answer(a.finding(), numbered.size() + 1));
              }
              return numbered;
            });
  }

  private static Arbitrary<Answer> answer(Step step) {
    Arbitrary<Side> side =
        step.sided() ? Arbitraries.of(Side.class) : Arbitraries.just((Side) null);
    Arbitrary<Map<String, String>> details =
        Arbitraries.maps(
                step.details().isEmpty()
                    ? Arbitraries.just("reason")
                    : Arbitraries.of(step.details().stream().map(Detail::id).toList()),
                Arbitraries.just(""))
            .ofMaxSize(4)
            .flatMap(chosen -> detailValues(step, chosen.keySet()));
    if (step.isMeasured()) {
      return Arbitraries.integers()
          .between(0, 1000)
          .map(
              part -> {
                double span = step.measure().max() - step.measure().min();
                double number = step.measure().min() + span * part / 1000;
                number = step.measure().whole() ? Math.rint(number) : number;
                Quantity quantity = new Quantity(number, step.measure().unit());
                return new Answer(Finding.of(step.id(), quantity), 0);
              });
    }
    List<String> values = new ArrayList<>(step.values().stream().map(Value::id).toList());
    values.add(Value.NOT_EXAMINED);
    return Combinators.combine(side, Arbitraries.of(values), details)
        .as((s, v, d) -> new Answer(Finding.of(step.id(), s, v).withDetails(d), 0));
  }

  private static Arbitrary<Map<String, String>> detailValues(Step step, Set<String> chosen) {
    Arbitrary<Map<String, String>> made = Arbitraries.just(new TreeMap<String, String>());
    for (String id : chosen) {
      Arbitrary<String> value =
          step.detail(id)
              .map(
                  detail ->
                      detail.measure() == null
                          ? Arbitraries.of(detail.values())
                          : Arbitraries.of("0", "1", "2.5", "3", "5", "24", "48", "loud"))
              .orElse(Arbitraries.just("crying"));
      made =
          Combinators.combine(made, value)
              .as(
                  (before, text) -> {
                    Map<String, String> more = new TreeMap<>(before);
                    more.put(id, text);
                    return more;
                  });
    }
    return made;
  }

  @Provide
  Arbitrary<Baby> babies() {
    Map<String, List<String>> facts =
        Map.of(
            "sex", List.of("girl", "boy", "undetermined", "x"),
            "gestation", List.of("22+0", "24+0", "32+6", "33+0", "40+0", "42+6", "44+0", "40"),
            "age", List.of("0", "12", "24", "47.9", "48", "500", "9999", "old"),
            "born-at", List.of("2026-11-24T10:30:00Z", "2026-11-25T09:00", "2027-01-01T00:00"),
            "birth-weight", List.of("300", "2500", "4000", "7000", "0", "heavy"),
            "presentation", List.of("breech", "cephalic"),
            "hip-family-history", List.of("yes", "no"),
            "first-born", List.of("yes", "no"));
    return Arbitraries.maps(Arbitraries.of(facts.keySet()), Arbitraries.integers().between(0, 7))
        .map(
            chosen ->
                new Baby(
                    chosen.entrySet().stream()
                        .collect(
                            Collectors.toMap(
                                Map.Entry::getKey,
                                e ->
                                    facts
                                        .get(e.getKey())
                                        .get(e.getValue() % facts.get(e.getKey()).size())))));
  }

  @Provide
  Arbitrary<Settings> settings() {
    return Combinators.combine(
            Arbitraries.of(Setting.SATURATION_SCREEN.choices()),
            Arbitraries.of(Setting.HIP_ULTRASOUND.choices()),
            Arbitraries.of(Setting.SIZE_STANDARD.choices()))
        .as(
            (screen, hip, size) ->
                Settings.DEFAULT
                    .with(Setting.SATURATION_SCREEN, screen)
                    .with(Setting.HIP_ULTRASOUND, hip)
                    .with(Setting.SIZE_STANDARD, size));
  }

  @Property
  void neverThrowsAndNeverContradictsItself(
      @ForAll("findings") List<Answer> findings,
      @ForAll("babies") Baby baby,
      @ForAll("settings") Settings settings)
      throws JsonProcessingException {
    Assessment assessment =
        Assessor.of(Protocol.standard()).assess(baby, findings, settings, Bedside.NOW);
    assertNotNull(EventLines.json().writeValueAsString(assessment));
    assertNotNull(AssessmentWording.of(assessment, new Words(PROTOCOL, settings)));
    Set<String> rules = assessment.flags().stream().map(Flag::rule).collect(Collectors.toSet());
    Result screen = assessment.result("saturation-screen");
    assertEquals(
        screen != null && screen.value().equals("fail"),
        rules.stream().anyMatch(rule -> rule.startsWith("saturation-screen-failed")));
    assertEquals(
        screen != null && screen.value().equals("repeat"),
        rules.stream().anyMatch(rule -> rule.startsWith("saturation-screen-unclear")));
    Set<String> results = new HashSet<>();
    assessment.results().forEach(result -> assertTrue(results.add(result.id()), result.id()));
    Set<String> named = new HashSet<>();
    for (Flag flag : assessment.flags()) {
      assertTrue(named.add(flag.rule() + flag.steps()), flag + " twice");
      flag.steps().forEach(PROTOCOL::step);
      flag.statements().forEach(number -> assertTrue(number >= 1 && number <= findings.size()));
    }
    everyAbnormalFindingIsAccountedFor(findings, assessment);
  }

  private static void everyAbnormalFindingIsAccountedFor(
      List<Answer> findings, Assessment assessment) {
    Set<Integer> raised = new HashSet<>();
    assessment.flags().forEach(flag -> raised.addAll(flag.statements()));
    for (Answer answer : findings) {
      boolean abnormal =
          PROTOCOL
              .step(answer.step())
              .value(answer.value() == null ? "" : answer.value())
              .map(value -> value.norm() == Norm.ABNORMAL)
              .orElse(false);
      boolean simpleDimple =
          answer.is("lumbosacral", "dimple") && "yes".equals(answer.details().get("base-visible"));
      assertTrue(
          !abnormal || simpleDimple || raised.contains(answer.statement()), answer.toString());
    }
  }
}
