package tiptoe.protocol;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The facts about the baby and all regions from head to toe, with unique ids. */
public final class Protocol {
  private final Map<String, Fact> facts = new LinkedHashMap<>();
  private final List<Region> regions;
  private final Map<String, Step> steps = new LinkedHashMap<>();

  public Protocol(List<Fact> facts, List<Region> regions) {
    this.regions = List.copyOf(regions);
    for (Fact fact : facts) {
      if (this.facts.put(fact.id(), fact) != null) {
        throw new IllegalArgumentException(
            "expected unique fact ids, found " + fact.id() + " twice");
      }
    }
    for (Region region : this.regions) {
      for (Step step : region.steps()) {
        if (steps.put(step.id(), step) != null) {
          throw new IllegalArgumentException(
              "expected unique step ids, found " + step.id() + " twice");
        }
      }
    }
    if (this.regions.stream().map(Region::id).distinct().count() != this.regions.size()) {
      throw new IllegalArgumentException("expected unique region ids");
    }
  }

  /** The protocol this project ships. */
  public static Protocol standard() {
    return Shipped.PROTOCOL;
  }

  /** What can be known of the baby beside the findings. */
  public Stream<Fact> facts() {
    return facts.values().stream();
  }

  public Optional<Fact> fact(String id) {
    return Optional.ofNullable(facts.get(id));
  }

  /** What is wrong with this value of a fact, for people; empty where it can be recorded. */
  public Optional<String> problem(String fact, String value) {
    return facts.containsKey(fact)
        ? facts.get(fact).problem(value)
        : Optional.of("expected a fact about the baby, found " + fact);
  }

  public List<Region> regions() {
    return regions;
  }

  public Stream<Step> steps() {
    return steps.values().stream();
  }

  public Optional<Region> region(String id) {
    return regions.stream().filter(region -> region.id().equals(id)).findFirst();
  }

  public Optional<Step> find(String stepId) {
    return Optional.ofNullable(steps.get(stepId));
  }

  /** The step with this id, which must exist. */
  public Step step(String id) {
    return find(id)
        .orElseThrow(() -> new IllegalArgumentException("expected a step id, found " + id));
  }

  private static final class Shipped {
    static final Protocol PROTOCOL = ProtocolReader.readShipped();
  }
}
