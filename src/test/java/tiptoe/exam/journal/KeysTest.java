package tiptoe.exam.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.Signature;
import java.time.Instant;
import java.util.Base64;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.exam.SignedStatement;

/** A signer's key, and those that are trusted. */
class KeysTest {
  private static final char[] PASSPHRASE = "four quiet boats".toCharArray();

  /** Fewer than in earnest, since a key is derived for each test. */
  private static final int ITERATIONS = 1000;

  private static final SignedStatement STATEMENT =
      new SignedStatement(
          "exam",
          "ab".repeat(32),
          7,
          Instant.parse("2026-03-02T12:00:00Z"),
          "Dr Reed",
          "registrar",
          Map.of());

  @TempDir Path folder;

  private SigningKey made(String name) throws IOException {
    return SigningKey.create(folder.resolve(name), "Dr Reed", PASSPHRASE, ITERATIONS);
  }

  @Test
  void opensWithItsPassphraseAndSignsAsBefore() throws Exception {
    SigningKey made = made("key.json");
    SigningKey opened = SigningKey.open(folder.resolve("key.json"), PASSPHRASE);
    assertEquals(made.key(), opened.key());
    assertEquals(made.fingerprint(), opened.fingerprint());
    // Ed25519 draws no random number (RFC 8032, 5.1.6): the same key signs the same alike.
    assertEquals(made.signature(STATEMENT), opened.signature(STATEMENT));
    Signature check = Signature.getInstance("Ed25519");
    check.initVerify(SignedStatement.publicKey(made.key()));
    check.update(STATEMENT.toSign(made.fingerprint()).getBytes());
    assertTrue(check.verify(Base64.getUrlDecoder().decode(opened.signature(STATEMENT))));
  }

  @Test
  void isKeptFromOthersAndHoldsNoSecretInTheOpen() throws IOException {
    made("key.json");
    Path file = folder.resolve("key.json");
    assertEquals("rw-------", PosixFilePermissions.toString(Files.getPosixFilePermissions(file)));
    String text = Files.readString(file);
    assertFalse(text.contains("quiet"), text);
    // The private key in PKCS #8 begins with these bytes (RFC 8410, 7).
    assertFalse(text.contains("MC4CAQAwBQYDK2Vw"), text);
  }

  @Test
  void isNotReplacedByAnother() throws IOException {
    made("key.json");
    RecordProblem problem = assertThrows(RecordProblem.class, () -> made("key.json"));
    assertEquals("there is a key already in " + folder.resolve("key.json"), problem.getMessage());
  }

  @Test
  void aWrongPassphraseADamagedFileAndNoFileAreSaidToBeSo() throws IOException {
    made("key.json");
    Path file = folder.resolve("key.json");
    assertProblem("the passphrase of the key is wrong", file, "loud boats".toCharArray());
    assertProblem("expected a signing key in ", folder.resolve("none"), PASSPHRASE);
    String text = Files.readString(file);
    Files.writeString(file, text.substring(0, text.length() / 2));
    assertProblem("the key in " + file + " was damaged", file, PASSPHRASE);
    Files.writeString(file, "{}");
    assertProblem("expected ed25519-pkcs8-aes-256-gcm in " + file, file, PASSPHRASE);
  }

  private static void assertProblem(String begin, Path file, char[] passphrase) {
    String told =
        assertThrows(RecordProblem.class, () -> SigningKey.open(file, passphrase)).getMessage();
    assertTrue(told.startsWith(begin), told);
  }

  /** Whoever puts another public key beside the private one does not have it opened. */
  @Test
  void thePublicKeyGoesWithThePrivateOne() throws IOException {
    SigningKey first = made("first");
    SigningKey second = made("second");
    Path file = folder.resolve("first");
    Files.writeString(file, Files.readString(file).replace(first.key(), second.key()));
    assertProblem("the passphrase of the key is wrong, or the key was changed", file, PASSPHRASE);
  }

  @Test
  void trustsWhatWasAddedAndNothingElse() throws IOException {
    SigningKey key = made("key");
    TrustedKeys trusted = new TrustedKeys(folder.resolve("data"));
    assertEquals(Map.of(), trusted.owners());
    trusted.add(key.key(), " Dr Reed ");
    assertEquals(Map.of(key.fingerprint(), "Dr Reed"), trusted.owners());
    assertThrows(IllegalArgumentException.class, () -> trusted.add("AAAA", "Dr Reed"));
    assertThrows(IllegalArgumentException.class, () -> trusted.add(key.key(), "a\nb"));
    assertThrows(IllegalArgumentException.class, () -> trusted.add(key.key(), " "));
    assertEquals(1, trusted.owners().size());
  }

  @Test
  void aLineThatIsNoKeyIsNamed() throws IOException {
    TrustedKeys trusted = new TrustedKeys(folder);
    Path file = folder.resolve("trusted-keys");
    Files.writeString(file, "# whose\n\nAAAA Dr Reed\n");
    String told = assertThrows(RecordProblem.class, trusted::owners).getMessage();
    assertEquals("expected a public key of Ed25519 in line 3 of " + file, told);
    Files.writeString(file, made("key").key() + "\n");
    told = assertThrows(RecordProblem.class, trusted::owners).getMessage();
    assertEquals("expected a key and whose it is in line 1 of " + file, told);
  }
}
