package tiptoe.exam.journal;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Arrays;
import java.util.Base64;
import tiptoe.exam.SignedStatement;
import tiptoe.exam.Signer;
import tiptoe.files.BoundedFile;
import tiptoe.files.OwnerOnly;

/**
 * A signer's key pair, Ed25519 (RFC 8032), in a file that only its owner may read: JSON with the
 * public key, and the private one encrypted by AES-256-GCM under a key that PBKDF2 makes of a
 * passphrase, as {@link DataKey} does it.
 */
public final class SigningKey implements Signer {
  private static final String ALGORITHM = "Ed25519";
  private static final String FORM = "ed25519-pkcs8-aes-256-gcm";
  private static final int MOST_ITERATIONS = 10_000_000;

  private final String publicKey;
  private final PrivateKey privateKey;

  private SigningKey(String publicKey, PrivateKey privateKey) {
    this.publicKey = publicKey;
    this.privateKey = privateKey;
  }

  /** Where the key of the user is, unless another file is named. */
  public static Path place(Path data) {
    return data.resolve("signing-key.json");
  }

  /**
   * Makes a new key pair, in a new file.
   *
   * @throws RecordProblem when the file is there already: records signed by its key would have lost
   *     it
   */
  public static SigningKey create(Path file, String owner, char[] passphrase) throws IOException {
    return create(file, owner, passphrase, DataKey.ITERATIONS);
  }

  static SigningKey create(Path file, String owner, char[] passphrase, int iterations)
      throws IOException {
    KeyPair pair = generate();
    String key = Base64.getEncoder().encodeToString(pair.getPublic().getEncoded());
    byte[] salt = DataKey.random(16);
    byte[] secret = pair.getPrivate().getEncoded();
    byte[] wrapped =
        DataKey.encrypt(DataKey.derive(passphrase, salt, iterations), secret, bound(key));
    Arrays.fill(secret, (byte) 0);
    ObjectNode json = EventLines.json().createObjectNode();
    json.put("form", FORM).put("owner", owner).put("public", key);
    json.put("kdf", "pbkdf2-hmac-sha256").put("iterations", iterations);
    json.put("salt", salt).put("private", wrapped);
    OwnerOnly.createFolder(file.toAbsolutePath().getParent());
    try {
      OwnerOnly.write(file, (json.toPrettyString() + "\n").getBytes(StandardCharsets.UTF_8));
    } catch (FileAlreadyExistsException e) {
      throw new RecordProblem("there is a key already in " + file, e);
    }
    return new SigningKey(key, pair.getPrivate());
  }

  private static KeyPair generate() {
    try {
      return KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  // The public key goes with the private one: another in its place does not open.
  private static byte[] bound(String key) {
    return (FORM + " " + key).getBytes(StandardCharsets.UTF_8);
  }

  /**
   * Opens a key.
   *
   * @throws RecordProblem when there is none in this file, or the passphrase is wrong
   */
  public static SigningKey open(Path file, char[] passphrase) throws IOException {
    JsonNode json = read(file);
    int iterations = json.path("iterations").asInt();
    String key = json.path("public").asText();
    if (!FORM.equals(json.path("form").asText())
        || iterations < 1
        || iterations > MOST_ITERATIONS) {
      throw new RecordProblem("expected " + FORM + " in " + file);
    }
    try {
      SignedStatement.publicKey(key);
      byte[] secret =
          DataKey.decrypt(
              DataKey.derive(passphrase, json.path("salt").binaryValue(), iterations),
              json.path("private").binaryValue(),
              bound(key));
      PrivateKey opened =
          KeyFactory.getInstance(ALGORITHM).generatePrivate(new PKCS8EncodedKeySpec(secret));
      Arrays.fill(secret, (byte) 0);
      return new SigningKey(key, opened);
    } catch (GeneralSecurityException e) {
      throw new RecordProblem("the passphrase of the key is wrong, or the key was changed", e);
    } catch (IOException | IllegalArgumentException | NullPointerException e) {
      throw new RecordProblem("the key in " + file + " was damaged", e);
    }
  }

  private static JsonNode read(Path file) throws IOException {
    try {
      return EventLines.json().readTree(BoundedFile.KEY.bytes(file));
    } catch (NoSuchFileException e) {
      throw new RecordProblem("expected a signing key in " + file + ", found none", e);
    } catch (com.fasterxml.jackson.core.JacksonException e) {
      throw new RecordProblem("the key in " + file + " was damaged", e);
    }
  }

  @Override
  public String key() {
    return publicKey;
  }

  /** SHA-256 of the public key, in hexadecimal. */
  public String fingerprint() {
    return SignedStatement.fingerprint(publicKey);
  }

  @Override
  public String signature(SignedStatement statement) {
    try {
      Signature signature = Signature.getInstance(ALGORITHM);
      signature.initSign(privateKey);
      signature.update(statement.toSign(fingerprint()).getBytes(StandardCharsets.US_ASCII));
      return Base64.getUrlEncoder().withoutPadding().encodeToString(signature.sign());
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }
}
