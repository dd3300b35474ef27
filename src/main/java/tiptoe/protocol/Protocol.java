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
  private final LocalProtocol local;

  public Protocol(List<Fact> facts, List<Region> regions) {
    this(facts, regions, null);
  }

  private Protocol(List<Fact> facts, List<Region> regions, LocalProtocol local) {
    this.local = local;
    this.regions = List.copyOf(regions);
    facts.forEach(fact -> add(this.facts, "fact", fact.id(), fact));
    this.regions.stream()
        .flatMap(region -> region.steps().stream())
        .forEach(step -> add(steps, "step", step.id(), step));
    if (this.regions.stream().map(Region::id).distinct().count() != this.regions.size()) {
      throw new IllegalArgumentException("expected unique region ids");
    }
  }

  private static <T> void add(Map<String, T> all, String kind, String id, T one) {
    if (all.put(id, one) != null) {
      throw new IllegalArgumentException(
          "expected unique %s ids, found %s twice".formatted(kind, id));
    }
  }

  /** The protocol this project ships. */
  public static Protocol standard() {
    return Shipped.PROTOCOL;
  }

  /** The shipped protocol with what a ward adds to it. */
  public static Protocol with(LocalProtocol local) {
    Protocol ours = standard();
    return new Protocol(
        List.copyOf(ours.facts.values()),
        ours.regions.stream().map(region -> region.with(local)).toList(),
        local);
  }

  /**
   * The protocol of a record.
   *
   * @param local the text of the ward's protocol that it kept; null for none
   */
  public static Protocol recorded(String local) {
    return local == null ? standard() : with(LocalProtocol.kept(local, standard()));
  }

  /** What a ward adds; its steps are among the {@link #steps}. */
  public Optional<LocalProtocol> local() {
    return Optional.ofNullable(local);
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

  /**
   * Sees that a fact can be recorded.
   *
   * @throws IllegalArgumentException with the {@link #problem}, where there is one
   */
  public void require(String fact, String value) {
    problem(fact, value)
        .ifPresent(
            problem -> {
              throw new IllegalArgumentException(problem);
            });
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
