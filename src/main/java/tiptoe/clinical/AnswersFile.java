package tiptoe.clinical;

import static tiptoe.clinical.TermReader.expect;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.ZonedDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import tiptoe.exam.Answer;
import tiptoe.exam.Baby;
import tiptoe.finding.Bound;
import tiptoe.finding.Finding;
import tiptoe.finding.Quantity;
import tiptoe.finding.Source;
import tiptoe.protocol.Detail;
import tiptoe.protocol.Measure;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.protocol.Value;

/**
 * Findings in a JSON file: {@code {"baby": {"sex": "girl", "age": 18}, "examined-at":
 * "2026-11-25T10:30:00Z", "answers": [{"step": "clavicle", "side": "left", "value": "crepitus"},
 * {"step": "weight", "number": 3420, "unit": "g"}]}}. An answer may have {@code "details"}, an
 * object, and {@code baby} may be called {@code context}. Baby and time may be left out, and other
 * keys are not looked at, so that what {@code replay --json} printed can be read.
 *
 * @param baby what was stated of the baby
 * @param answers the findings, numbered from 1 in the order of the file
 * @param examinedAt when; null where it is not said
 * @param problems what cannot be meant; where there are any, the rest is not to be used
 */
public record AnswersFile(
    Baby baby, List<Answer> answers, ZonedDateTime examinedAt, List<String> problems) {
  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();
  private static final int MOST_PROBLEMS = 20;
  private static final DecimalFormat NUMBER =
      new DecimalFormat("0.#", DecimalFormatSymbols.getInstance(Locale.ROOT));

  public AnswersFile {
    answers = List.copyOf(answers);
    problems = List.copyOf(problems.subList(0, Math.min(problems.size(), MOST_PROBLEMS)));
  }

  /**
   * Reads the text of a file.
   *
   * @param zone the zone in which dates are counted
   */
  public static AnswersFile parse(String json, Protocol protocol, ZoneId zone) {
    try {
      return new Reader(protocol).read(JSON.readTree(json), zone);
    } catch (JsonProcessingException e) {
      String where = e.getLocation() == null ? "" : " in line " + e.getLocation().getLineNr();
      String what = e.getOriginalMessage().lines().findFirst().orElse("something else");
      return new AnswersFile(
          Baby.UNKNOWN, List.of(), null, List.of("expected JSON, found" + where + ": " + what));
    }
  }

  /** Reads one file and gathers what is wrong with it. */
  private static final class Reader {
    private final Protocol protocol;
    private final List<String> problems = new ArrayList<>();

    Reader(Protocol protocol) {
      this.protocol = protocol;
    }

    AnswersFile read(JsonNode file, ZoneId zone) {
      if (!file.path("answers").isArray()) {
        problems.add("expected an object with a list of answers");
      }
      Baby baby = baby(file.has("context") ? file.get("context") : file.path("baby"));
      List<Answer> answers = new ArrayList<>();
      int number = 0;
      for (JsonNode entry : file.path("answers")) {
        number++;
        try {
          answers.add(answer(entry, number));
        } catch (IllegalArgumentException e) {
          problems.add("answer " + number + ": " + e.getMessage());
        }
      }
      return new AnswersFile(baby, answers, moment(file.path("examined-at"), zone), problems);
    }

    private Baby baby(JsonNode entry) {
      Map<String, String> facts = new TreeMap<>();
      entry
          .properties()
          .forEach(
              fact -> {
                String value = fact.getValue().asText();
                Optional<String> problem = protocol.problem(fact.getKey(), value);
                problem.ifPresent(text -> problems.add("baby: " + text));
                facts.put(fact.getKey(), value);
              });
      return new Baby(facts);
    }

    private ZonedDateTime moment(JsonNode said, ZoneId zone) {
      if (said.isMissingNode()) {
        return null;
      }
      try {
        return ZonedDateTime.parse(said.asText()).withZoneSameInstant(zone);
      } catch (DateTimeException e) {
        problems.add(
            "expected a time such as 2026-11-25T10:30:00Z for examined-at, found " + said.asText());
        return null;
      }
    }

    private Answer answer(JsonNode entry, int number) {
      Step step = protocol.step(entry.path("step").asText());
      String value = entry.path("value").asText(null);
      Side side = entry.has("side") ? Side.of(entry.get("side").asText()) : null;
      boolean left = Value.NOT_EXAMINED.equals(value);
      expect(
          value == null || left || step.value(value).isPresent(),
          "expected a value of step " + step.id() + ", found " + value);
      expect(side != null || !step.sided(), "expected a side for step " + step.id());
      boolean sidedValue = value != null && step.value(value).map(Value::sided).orElse(false);
      expect(
          side == null || step.sided() || sidedValue,
          "expected no side for step " + step.id() + ", found " + entry.path("side").asText());
      Quantity quantity = value == null ? quantity(step, entry) : null;
      Map<String, String> details = details(step, entry);
      return new Answer(
          new Finding(step.id(), side, value, quantity, details, List.of(), false, Source.TYPED),
          number);
    }

    private static Quantity quantity(Step step, JsonNode entry) {
      expect(step.isMeasured(), "expected a value for step " + step.id());
      expect(entry.path("number").isNumber(), "expected a number for step " + step.id());
      Quantity quantity =
          new Quantity(
              entry.get("number").asDouble(),
              entry.path("unit").asText(step.measure().unit()),
              entry.has("comparator") ? Bound.of(entry.path("comparator").asText()) : null);
      expect(
          quantity.comparator() == null || step.measure().bounds(),
          "expected no comparator for step " + step.id());
      expect(
          quantity.unit().equals(step.measure().unit()),
          "expected %s for step %s, found %s"
              .formatted(step.measure().unit(), step.id(), quantity.unit()));
      expect(
          step.measure().plausible(quantity.number()),
          "expected a plausible number for step " + step.id() + ", found " + quantity);
      return quantity;
    }

    private static Map<String, String> details(Step step, JsonNode entry) {
      Map<String, String> details = new TreeMap<>();
      entry
          .path("details")
          .properties()
          .forEach(detail -> details.put(detail.getKey(), detail.getValue().asText()));
      for (String id : details.keySet()) {
        expect(
            step.detail(id).isPresent() || id.equals("reason"),
            "expected a detail of step " + step.id() + ", found " + id);
        step.detail(id).ifPresent(detail -> meant(step, detail, details.get(id)));
      }
      return details;
    }

    // A grade that cannot be read would be a grade that no rule sees.
    private static void meant(Step step, Detail detail, String said) {
      String name = step.id() + "." + detail.id();
      Measure measure = detail.measure();
      if (measure != null) {
        expect(
            measure.plausible(TermReader.numberIn(said)),
            String.format(
                Locale.ROOT,
                "expected a%s number from %s to %s for %s, found %s",
                measure.whole() ? " whole" : "",
                NUMBER.format(measure.min()),
                NUMBER.format(measure.max()),
                name,
                said));
        return;
      }
      List<String> words = detail.many() ? List.of(said.split(",", -1)) : List.of(said);
      expect(
          detail.values().isEmpty() || detail.values().containsAll(words),
          "expected %s of %s for %s, found %s"
              .formatted(
                  detail.many() ? "any" : "one", String.join(", ", detail.values()), name, said));
    }
  }
}
