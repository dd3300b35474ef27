package tiptoe.exam;

import java.time.Instant;
import java.util.Map;

/**
 * Who answers for the record as it was then.
 *
 * @param seq number of the entry that holds it
 * @param prev hash of the entry before it, so of the whole record up to it
 * @param seal SHA-256 over {@code prev}, name, role and the audio, a line each: printed on a report
 *     it ties the paper to this very record
 * @param audio file name to SHA-256 of the audio segments at that time
 */
public record Signature(
    long seq,
    Instant at,
    String name,
    String role,
    String prev,
    String seal,
    Map<String, String> audio) {
  /** The signature in this entry. */
  static Signature of(Entry entry, Event.Signed event) {
    StringBuilder all = new StringBuilder();
    all.append(entry.prev()).append('\n');
    all.append(event.name()).append('\n').append(event.role()).append('\n');
    new java.util.TreeMap<>(event.audio())
        .forEach((file, hash) -> all.append(hash).append("  ").append(file).append('\n'));
    String seal = Hashes.sha256(all.toString().getBytes(java.nio.charset.StandardCharsets.UTF_8));
    return new Signature(
        entry.seq(), entry.at(), event.name(), event.role(), entry.prev(), seal, event.audio());
  }

  public Signature {
    audio = java.util.Collections.unmodifiableMap(new java.util.TreeMap<>(audio));
  }
}
