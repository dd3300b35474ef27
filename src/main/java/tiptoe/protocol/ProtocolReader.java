package tiptoe.protocol;

import com.fasterxml.jackson.annotation.JsonProperty;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/** Reads the data file; a mistake in it names the step and what was expected. */
final class ProtocolReader {
  private static final String SHIPPED = "protocol.yaml";
  private static final ObjectMapper YAML =
      new ObjectMapper(new YAMLFactory()).enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);

  private ProtocolReader() {}

  static Protocol readShipped() {
    try (InputStream in = ProtocolReader.class.getResourceAsStream(SHIPPED)) {
      return read(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  static Protocol read(InputStream in) throws IOException {
    File file = YAML.readValue(in, File.class);
    return new Protocol(
        Stream.concat(
                file.facts().stream().map(entry -> entry.toFact(false)),
                file.handover().stream().map(entry -> entry.toFact(true)))
            .toList(),
        file.regions().stream().map(RegionEntry::toRegion).toList());
  }

  private record File(List<FactEntry> facts, List<FactEntry> handover, List<RegionEntry> regions) {
    File {
      handover = handover == null ? List.of() : handover;
    }
  }

  private record FactEntry(
      String fact,
      String label,
      Fact.Kind kind,
      List<String> values,
      Map<String, String> labels,
      Measure measure) {
    Fact toFact(boolean handover) {
      String name = label == null ? Labels.of(fact) : label;
      return new Fact(
          fact, name, kind, orEmpty(values), labels == null ? Map.of() : labels, measure, handover);
    }
  }

  private record RegionEntry(String region, String label, List<StepEntry> steps) {
    Region toRegion() {
      String name = label == null ? Labels.of(region) : label;
      return new Region(region, name, steps.stream().map(step -> step.toStep(region)).toList());
    }
  }

  private record StepEntry(
      String step,
      String label,
      String one,
      boolean sided,
      boolean key,
      boolean optional,
      @JsonProperty("for") String sex,
      boolean many,
      Measure measure,
      List<String> normal,
      List<String> benign,
      List<String> abnormal,
      List<String> neutral,
      @JsonProperty("sided-values") List<String> sidedValues,
      Map<String, String> labels,
      Map<String, DetailEntry> details,
      boolean series,
      List<String> beside,
      String reminder) {

    Step toStep(String region) {
      Step made =
          new Step(
              step,
              region,
              label == null ? Labels.of(step) : label,
              one,
              sided,
              key,
              optional,
              sex,
              many,
              measure,
              values(),
              toDetails(),
              series,
              orEmpty(beside),
              reminder);
      if (made.isMeasured() == !made.values().isEmpty()) {
        throw new IllegalArgumentException(
            "expected either values or a measure in step "
                + step
                + ", found "
                + (made.isMeasured() ? "both" : "neither"));
      }
      checkNames(made);
      return made;
    }

    private List<Value> values() {
      return Stream.of(
              values(normal, Norm.NORMAL),
              values(benign, Norm.BENIGN),
              values(abnormal, Norm.ABNORMAL),
              values(neutral, Norm.NEUTRAL))
          .flatMap(Function.identity())
          .toList();
    }

    private Stream<Value> values(List<String> ids, Norm norm) {
      return orEmpty(ids).stream()
          .map(id -> new Value(id, labelOf(id), norm, orEmpty(sidedValues).contains(id)));
    }

    private String labelOf(String id) {
      return labels != null && labels.containsKey(id) ? labels.get(id) : Labels.of(id);
    }

    private List<Detail> toDetails() {
      return details == null
          ? List.of()
          : details.entrySet().stream()
              .map(one -> one.getValue().toDetail(one.getKey(), labelOf(one.getKey())))
              .toList();
    }

    private void checkNames(Step made) {
      if (made.values().stream().map(Value::id).distinct().count() != made.values().size()) {
        throw new IllegalArgumentException("expected unique value ids in step " + step);
      }
      if (series && made.detail(Detail.REPEAT).isEmpty()) {
        throw new IllegalArgumentException("expected the detail repeat in series step " + step);
      }
      Stream.of(
              orEmpty(sidedValues).stream(),
              made.beside().stream(),
              made.details().stream().map(Detail::of).filter(of -> of != null))
          .flatMap(Function.identity())
          .filter(id -> made.value(id).isEmpty())
          .findFirst()
          .ifPresent(
              id -> {
                throw new IllegalArgumentException(
                    "expected a value of step " + step + ", found " + id);
              });
    }
  }

  private record DetailEntry(
      String of, boolean ask, List<String> values, Measure measure, boolean many) {
    Detail toDetail(String id, String label) {
      if ((measure == null) == (values == null)) {
        throw new IllegalArgumentException("expected values or a measure in detail " + id);
      }
      return new Detail(id, label, of, ask, orEmpty(values), measure, many);
    }
  }

  private static List<String> orEmpty(List<String> list) {
    return list == null ? List.of() : list;
  }
}
