package tiptoe.graph;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;

/** SHA-256 of files and texts. */
final class Sha256 {
  private static final int CHUNK = 1 << 16;

  private Sha256() {}

  static MessageDigest start() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every Java platform has SHA-256", e);
    }
  }

  static byte[] of(Path file) throws IOException {
    MessageDigest digest = start();
    byte[] chunk = new byte[CHUNK];
    try (InputStream in = Files.newInputStream(file)) {
      for (int n = in.read(chunk); n > 0; n = in.read(chunk)) {
        digest.update(chunk, 0, n);
      }
    }
    return digest.digest();
  }

  /** Adds a text so that two texts never look like one longer text. */
  static void add(MessageDigest digest, String text) {
    digest.update(text.getBytes(StandardCharsets.UTF_8));
    digest.update((byte) 0);
  }
}
