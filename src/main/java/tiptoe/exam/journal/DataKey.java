package tiptoe.exam.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.SecureRandom;
import java.util.Arrays;
import java.util.Base64;
import javax.crypto.Cipher;
import javax.crypto.SecretKey;
import javax.crypto.SecretKeyFactory;
import javax.crypto.spec.GCMParameterSpec;
import javax.crypto.spec.PBEKeySpec;
import javax.crypto.spec.SecretKeySpec;
import tiptoe.files.Sha256;

/**
 * The key of one examination: 256 random bits, kept in the first line of its journal, encrypted by
 * a key derived from the passphrase. AES-256 in Galois/Counter mode (NIST SP 800-38D) throughout,
 * with a random 96-bit nonce for every piece.
 */
final class DataKey {
  /** PBKDF2-HMAC-SHA256: OWASP Password Storage Cheat Sheet, 2023. */
  static final int ITERATIONS = 600_000;

  private static final String FORM = "aes-256-gcm";
  private static final int VERSION = 2;
  private static final int KEY_BYTES = 32;
  private static final int NONCE_BYTES = 12;
  private static final int TAG_BITS = 128;
  private static final int MOST_ITERATIONS = 10_000_000;
  private static final SecureRandom RANDOM = new SecureRandom();

  private final SecretKey key;
  private final byte[] header;

  private final byte[] bound;

  /**
   * @param binds whether lines are encrypted for this very header; not in records of version 1
   */
  private DataKey(byte[] key, byte[] header, boolean binds) {
    this.key = new SecretKeySpec(key, "AES");
    this.header = header;
    bound = bytes(binds ? "line " + Sha256.hexOf(header) : "line");
  }

  /** A new key under this passphrase. */
  static DataKey create(char[] passphrase, int iterations) {
    byte[] salt = random(16);
    byte[] secret = random(KEY_BYTES);
    ObjectNode header = EventLines.json().createObjectNode();
    header.put("encrypted", FORM).put("kdf", "pbkdf2-hmac-sha256").put("iterations", iterations);
    header.put("salt", base64(salt)).put("version", VERSION);
    byte[] wrapped = encrypt(derive(passphrase, salt, iterations), secret, bytes(FORM));
    header.put("key", base64(wrapped));
    header.put("sum", sum(header));
    return new DataKey(secret, bytes(header.toString()), true);
  }

  /** Whether this first line of a journal says that the rest is encrypted. */
  static boolean isHeader(byte[] line) {
    return new String(line, StandardCharsets.UTF_8).startsWith("{\"encrypted\":");
  }

  /**
   * Gets the key out of the first line of a journal.
   *
   * @throws RecordProblem when the passphrase is wrong, or the line was damaged
   */
  static DataKey unlock(byte[] line, char[] passphrase) throws RecordProblem {
    ObjectNode header = parse(line);
    int iterations = header.path("iterations").asInt();
    int version = header.path("version").asInt(1);
    if (!FORM.equals(header.path("encrypted").asText())
        || iterations < 1
        || iterations > MOST_ITERATIONS
        || version > VERSION) {
      throw new RecordProblem(
          "expected " + FORM + ", version " + VERSION + ", in the first line of the journal");
    }
    try {
      byte[] salt = header.path("salt").binaryValue();
      SecretKey outer = derive(passphrase, salt, iterations);
      byte[] key = decrypt(outer, header.path("key").binaryValue(), bytes(FORM));
      return new DataKey(key, line, version > 1);
    } catch (GeneralSecurityException e) {
      throw new RecordProblem("the passphrase is wrong", e);
    } catch (IOException | IllegalArgumentException e) {
      throw damaged(e);
    }
  }

  private static ObjectNode parse(byte[] line) throws RecordProblem {
    try {
      JsonNode node = EventLines.json().readTree(line);
      if (node instanceof ObjectNode header) {
        String sum = header.path("sum").asText();
        header.remove("sum");
        if (sum.equals(sum(header))) {
          return header;
        }
      }
    } catch (IOException e) {
      throw damaged(e);
    }
    throw damaged(null);
  }

  private static RecordProblem damaged(Exception cause) {
    return new RecordProblem(
        "the first line of the journal, which holds the key, was damaged", cause);
  }

  /** The first line of the journal. */
  byte[] header() {
    return header.clone();
  }

  /** What a line of the journal is encrypted for: this very first line, so no other fits. */
  byte[] bound() {
    return bound.clone();
  }

  /** Nonce, ciphertext and tag. */
  byte[] encrypt(byte[] plain, byte[] bound) {
    return encrypt(key, plain, bound);
  }

  /**
   * @param bound what was given when it was encrypted
   * @throws GeneralSecurityException when it was not encrypted by this key, or was changed since
   */
  byte[] decrypt(byte[] stored, byte[] bound) throws GeneralSecurityException {
    return decrypt(key, stored, bound);
  }

  static byte[] encrypt(SecretKey key, byte[] plain, byte[] bound) {
    try {
      byte[] nonce = random(NONCE_BYTES);
      Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
      cipher.init(Cipher.ENCRYPT_MODE, key, new GCMParameterSpec(TAG_BITS, nonce));
      cipher.updateAAD(bound);
      byte[] sealed = cipher.doFinal(plain);
      byte[] all = Arrays.copyOf(nonce, NONCE_BYTES + sealed.length);
      System.arraycopy(sealed, 0, all, NONCE_BYTES, sealed.length);
      return all;
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  static byte[] decrypt(SecretKey key, byte[] stored, byte[] bound)
      throws GeneralSecurityException {
    if (stored.length < NONCE_BYTES + TAG_BITS / 8) {
      throw new GeneralSecurityException("too short");
    }
    Cipher cipher = Cipher.getInstance("AES/GCM/NoPadding");
    cipher.init(Cipher.DECRYPT_MODE, key, new GCMParameterSpec(TAG_BITS, stored, 0, NONCE_BYTES));
    cipher.updateAAD(bound);
    return cipher.doFinal(stored, NONCE_BYTES, stored.length - NONCE_BYTES);
  }

  static SecretKey derive(char[] passphrase, byte[] salt, int iterations) {
    PBEKeySpec spec = new PBEKeySpec(passphrase, salt, iterations, KEY_BYTES * 8);
    try {
      SecretKeyFactory factory = SecretKeyFactory.getInstance("PBKDF2WithHmacSHA256");
      return new SecretKeySpec(factory.generateSecret(spec).getEncoded(), "AES");
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    } finally {
      spec.clearPassword();
    }
  }

  private static String sum(ObjectNode header) {
    return Sha256.hexOf(bytes(header.toString())).substring(0, 16);
  }

  static byte[] random(int count) {
    byte[] bytes = new byte[count];
    RANDOM.nextBytes(bytes);
    return bytes;
  }

  private static String base64(byte[] bytes) {
    return Base64.getEncoder().encodeToString(bytes);
  }

  private static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }
}
