package tiptoe.files;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), which every Java platform has. */
public final class Sha256 {
  private static final int CHUNK = 1 << 16;

  private Sha256() {}

  public static MessageDigest start() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("expected SHA-256 in every Java platform, found none", e);
    }
  }

  public static byte[] of(byte[] bytes) {
    return start().digest(bytes);
  }

  public static byte[] of(Path file) throws IOException {
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
  public static void add(MessageDigest digest, String text) {
    digest.update(text.getBytes(StandardCharsets.UTF_8));
    digest.update((byte) 0);
  }

  /** In lower-case hexadecimal, 64 digits. */
  public static String hex(byte[] hash) {
    return HexFormat.of().formatHex(hash);
  }

  /** The hash of bytes in lower-case hexadecimal, 64 digits. */
  public static String hexOf(byte[] bytes) {
    return hex(of(bytes));
  }
}
