package tiptoe.exam;

import java.util.Map;
import java.util.Optional;
import tiptoe.protocol.Fact;
import tiptoe.protocol.Protocol;

/**
 * What is known of the baby beside the findings. Nothing is assumed: what was not stated is empty.
 *
 * @param facts fact id to value, as the protocol writes them; a record of an earlier version may
 *     hold a value that the protocol would not take now
 */
public record Baby(Map<String, String> facts) {
  public static final Baby UNKNOWN = new Baby(Map.of());

  public Baby {
    facts = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(facts));
  }

  public Optional<String> fact(String id) {
    return Optional.ofNullable(facts.get(id));
  }

  /** Whether it was said whose record this is: by name or by number. */
  public boolean isIdentified() {
    return facts.containsKey("name") || facts.containsKey("record-number");
  }

  /** What was stated of who it is: fact id to value, in the order of the protocol. */
  public Map<String, String> identity(Protocol protocol) {
    Map<String, String> identity = new java.util.LinkedHashMap<>();
    protocol
        .facts()
        .filter(Fact::identifies)
        .forEach(fact -> fact(fact.id()).ifPresent(value -> identity.put(fact.id(), value)));
    return identity;
  }

  public Optional<String> sex() {
    return fact("sex");
  }

  public boolean is(String factId, String value) {
    return value.equals(facts.get(factId));
  }

  public Baby with(String factId, String value) {
    Map<String, String> more = new java.util.TreeMap<>(facts);
    more.put(factId, value);
    return new Baby(more);
  }

  /** Without this fact, as if it had never been stated. */
  public Baby without(String factId) {
    Map<String, String> less = new java.util.TreeMap<>(facts);
    less.remove(factId);
    return new Baby(less);
  }
}
