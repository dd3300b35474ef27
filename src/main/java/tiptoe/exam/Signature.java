package tiptoe.exam;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Collections;
import java.util.Map;
import java.util.TreeMap;
import tiptoe.files.Sha256;

/**
 * Who answers for the record as it was then: by a signature, where a key made one; else by a name.
 *
 * @param seq number of the entry that holds it
 * @param prev hash of the entry before it, so of the whole record up to it
 * @param seal SHA-256 over all that is signed: printed on a report it ties the paper to this very
 *     record. It needs no key, so it does not say who made it.
 * @param audio file name to SHA-256 of the audio segments at that time
 * @param fingerprint of the key that signed, SHA-256 in hexadecimal; null for a name only
 * @param jws the JSON Web Signature in its compact form (RFC 7515); null for a name only
 * @param holds whether the signature is by that key over this record; true for a name only
 */
public record Signature(
    long seq,
    Instant at,
    String name,
    String role,
    String prev,
    String seal,
    Map<String, String> audio,
    String fingerprint,
    String jws,
    boolean holds) {
  /** The signature in this entry of this examination. */
  static Signature of(String id, Entry entry, Event.Signed event) {
    if (event.time() == null) {
      return ofEarlierVersion(entry, event);
    }
    SignedStatement statement =
        new SignedStatement(
            id == null ? "" : id,
            entry.prev(),
            entry.seq(),
            event.time(),
            String.valueOf(event.name()),
            String.valueOf(event.role()),
            event.audio());
    boolean isNamed = event.key() == null && event.signature() == null;
    boolean holds =
        isNamed
            || event.key() != null
                && event.signature() != null
                && statement.isSignedBy(event.key(), event.signature());
    String fingerprint = isNamed || !holds ? null : SignedStatement.fingerprint(event.key());
    return new Signature(
        entry.seq(),
        event.time(),
        event.name(),
        event.role(),
        entry.prev(),
        statement.seal(),
        event.audio(),
        fingerprint,
        fingerprint == null ? null : statement.toSign(fingerprint) + "." + event.signature(),
        holds && entry.at().equals(event.time()));
  }

  private static Signature ofEarlierVersion(Entry entry, Event.Signed event) {
    StringBuilder all = new StringBuilder();
    all.append(entry.prev()).append('\n');
    all.append(event.name()).append('\n').append(event.role()).append('\n');
    new TreeMap<>(event.audio())
        .forEach((file, hash) -> all.append(hash).append("  ").append(file).append('\n'));
    return new Signature(
        entry.seq(),
        entry.at(),
        event.name(),
        event.role(),
        entry.prev(),
        Sha256.hexOf(all.toString().getBytes(StandardCharsets.UTF_8)),
        event.audio(),
        null,
        null,
        event.key() == null && event.signature() == null);
  }

  public Signature {
    audio = Collections.unmodifiableMap(new TreeMap<>(audio));
  }

  /** Whether a key signed; else somebody has given a name. */
  public boolean isKeyed() {
    return jws != null;
  }
}
