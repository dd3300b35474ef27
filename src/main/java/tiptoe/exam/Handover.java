package tiptoe.exam;

import java.util.LinkedHashMap;
import java.util.Map;
import tiptoe.protocol.Fact;

/**
 * What was set going and what was done, with who and when as far as it is known.
 *
 * @param stated facts by their ids
 * @param ticked by the id of the item of the plan, what was ticked off last
 */
public record Handover(Map<String, Stated> stated, Map<String, Handled> ticked) {
  public Handover {
    stated = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(stated));
    ticked = Map.copyOf(ticked);
  }

  public static Handover of(ExamRecord record) {
    Map<String, Stated> stated = new LinkedHashMap<>();
    record
        .protocol()
        .facts()
        .filter(Fact::handover)
        .forEach(fact -> record.stated(fact.id()).ifPresent(one -> stated.put(fact.id(), one)));
    return new Handover(stated, record.ticked());
  }

  /** That of facts of which nobody knows who stated them. */
  public static Handover of(Baby baby) {
    Map<String, Stated> stated = new LinkedHashMap<>();
    baby.facts().forEach((id, value) -> stated.put(id, new Stated(id, value, null, null)));
    return new Handover(stated, Map.of());
  }
}
