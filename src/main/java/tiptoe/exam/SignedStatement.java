package tiptoe.exam;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.time.Instant;
import java.util.Arrays;
import java.util.Base64;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import tiptoe.files.Sha256;

/**
 * What is signed, in the canonical form of RFC 8785: members in the order of their names, no blank
 * between them, so that the same record always gives the same bytes.
 *
 * @param record id of the examination
 * @param head SHA-256 of the last line of the journal before the signature, in hexadecimal
 * @param sequence number of the entry that holds the signature
 * @param time when
 * @param sound file name to SHA-256 of every segment
 */
public record SignedStatement(
    String record,
    String head,
    long sequence,
    Instant time,
    String name,
    String role,
    Map<String, String> sound) {
  private static final String VERSION = "1";
  private static final String ALGORITHM = "Ed25519";

  public SignedStatement {
    sound = Map.copyOf(sound);
  }

  /** The canonical JSON. */
  public String json() {
    StringBuilder json = new StringBuilder("{\"head\":");
    text(json, head).append(",\"name\":");
    text(json, name).append(",\"record\":");
    text(json, record).append(",\"role\":");
    // As text: RFC 8785 writes numbers as a double, which holds no more than 53 bits.
    text(json, role).append(",\"sequence\":");
    text(json, Long.toString(sequence)).append(",\"sound\":{");
    SortedMap<String, String> sorted = new TreeMap<>(sound);
    String comma = "";
    for (Map.Entry<String, String> segment : sorted.entrySet()) {
      json.append(comma);
      text(json, segment.getKey()).append(':');
      text(json, segment.getValue());
      comma = ",";
    }
    json.append("},\"time\":");
    text(json, time.toString()).append(",\"version\":");
    return text(json, VERSION).append('}').toString();
  }

  // RFC 8785, 3.2.2.2: the short escapes where there are any, else four hexadecimal digits.
  private static StringBuilder text(StringBuilder json, String text) {
    json.append('"');
    for (char c : text.toCharArray()) {
      int at = "\b\f\n\r\t\"\\".indexOf(c);
      if (at >= 0) {
        json.append('\\').append("bfnrt\"\\".charAt(at));
      } else if (c < ' ') {
        json.append(String.format("\\u%04x", (int) c));
      } else {
        json.append(c);
      }
    }
    return json.append('"');
  }

  /** SHA-256 of the canonical JSON: ties paper to this very record. It needs no key to make. */
  public String seal() {
    return Sha256.hexOf(json().getBytes(StandardCharsets.UTF_8));
  }

  /**
   * The first two parts of a JSON Web Signature (RFC 7515, algorithm of RFC 8037); the signature is
   * over them.
   *
   * @param fingerprint of the key
   */
  public String toSign(String fingerprint) {
    return url("{\"alg\":\"EdDSA\",\"kid\":\"" + fingerprint + "\"}") + "." + url(json());
  }

  private static String url(String text) {
    return Base64.getUrlEncoder()
        .withoutPadding()
        .encodeToString(text.getBytes(StandardCharsets.UTF_8));
  }

  /** Whether this signature over it is by this key, both as in {@link Event.Signed}. */
  boolean isSignedBy(String key, String signature) {
    try {
      Signature check = Signature.getInstance(ALGORITHM);
      check.initVerify(publicKey(key));
      check.update(toSign(fingerprint(key)).getBytes(StandardCharsets.US_ASCII));
      byte[] bytes = Base64.getUrlDecoder().decode(signature);
      // One signature has one spelling: what was flipped in unused bits is not what was signed.
      String again = Base64.getUrlEncoder().withoutPadding().encodeToString(bytes);
      return again.equals(signature) && check.verify(bytes);
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      return false;
    }
  }

  /**
   * The key in this base64 of its X.509 form.
   *
   * @throws GeneralSecurityException when it is not one of Ed25519
   */
  public static PublicKey publicKey(String base64) throws GeneralSecurityException {
    byte[] bytes = Base64.getDecoder().decode(base64);
    PublicKey key = KeyFactory.getInstance(ALGORITHM).generatePublic(new X509EncodedKeySpec(bytes));
    if (!Arrays.equals(key.getEncoded(), bytes)) {
      throw new GeneralSecurityException("expected the canonical form of a key");
    }
    return key;
  }

  /** SHA-256 over the bytes of a public key, in hexadecimal: people compare keys by it. */
  public static String fingerprint(String key) {
    return Sha256.hexOf(Base64.getDecoder().decode(key));
  }
}
