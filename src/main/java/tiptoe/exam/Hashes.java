package tiptoe.exam;

import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 (FIPS 180-4), which every Java platform has. */
public final class Hashes {
  private Hashes() {}

  /** In hexadecimal, 64 digits. */
  public static String sha256(byte[] bytes) {
    return hex(digest().digest(bytes));
  }

  public static String hex(byte[] bytes) {
    return HexFormat.of().formatHex(bytes);
  }

  public static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException(e);
    }
  }
}
