package tiptoe.files;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), which every Java platform has. */
public final class Sha256 {
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
    try (var in = new DigestInputStream(Files.newInputStream(file), start())) {
      in.transferTo(OutputStream.nullOutputStream());
      return in.getMessageDigest().digest();
    }
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
