package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.util.LinkedHashMap;
import java.util.Map;
import tiptoe.exam.SignedStatement;
import tiptoe.files.BoundedFile;
import tiptoe.files.OwnerOnly;

/**
 * The public keys that are trusted here, in a file a person can read: one a line, in base64, a
 * blank, and whose it is. Lines that begin with # are remarks.
 */
public final class TrustedKeys {
  private final Path file;

  /**
   * @param data the user's data folder
   */
  public TrustedKeys(Path data) {
    file = data.resolve("trusted-keys");
  }

  /** Fingerprint to owner; empty where there is no such file. */
  public Map<String, String> owners() throws IOException {
    Map<String, String> owners = new LinkedHashMap<>();
    int number = 0;
    for (String line : lines().split("\\R")) {
      number++;
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      String[] parts = line.strip().split(" ", 2);
      if (parts.length < 2 || parts[1].isBlank()) {
        throw new RecordProblem("expected a key and whose it is in line " + number + " of " + file);
      }
      try {
        SignedStatement.publicKey(parts[0]);
        owners.put(SignedStatement.fingerprint(parts[0]), parts[1].strip());
      } catch (GeneralSecurityException | IllegalArgumentException e) {
        throw new RecordProblem(
            "expected a public key of Ed25519 in line " + number + " of " + file, e);
      }
    }
    return owners;
  }

  private String lines() throws IOException {
    try {
      return BoundedFile.TEXT.text(file);
    } catch (NoSuchFileException e) {
      return "";
    }
  }

  /**
   * Trusts a key from now on.
   *
   * @param key in base64
   * @param owner whose it is, in one line
   * @throws IllegalArgumentException when it is no such key, or the owner is blank
   */
  public void add(String key, String owner) throws IOException {
    try {
      SignedStatement.publicKey(key);
    } catch (GeneralSecurityException e) {
      throw new IllegalArgumentException("expected a public key of Ed25519, found " + key, e);
    }
    if (owner.isBlank() || owner.lines().count() != 1) {
      throw new IllegalArgumentException("expected whose key it is, in one line");
    }
    if (!Files.exists(file)) {
      OwnerOnly.createFolder(file.toAbsolutePath().getParent());
    }
    String line = key + " " + owner.strip() + "\n";
    OwnerOnly.append(file, line.getBytes(StandardCharsets.UTF_8));
  }
}
