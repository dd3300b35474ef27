package tiptoe.exam.journal;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.Base64;
import java.util.HexFormat;
import java.util.zip.CRC32;

/**
 * Lines encrypted one by one, so that each is safe as soon as it is written. A stored line is the
 * CRC-32 of the rest in 8 hexadecimal digits, a space, and the ciphertext in base64. A line whose
 * CRC is wrong was damaged; one whose CRC is right and that still does not decrypt was changed by
 * someone. A line that was moved breaks the chain.
 */
record EncryptedLines(DataKey key) implements LineCodec {
  private static final int CRC_DIGITS = 8;

  @Override
  public byte[] store(byte[] line) {
    byte[] text = Base64.getEncoder().encode(key.encrypt(line, key.bound()));
    String crc = crc(text, 0);
    byte[] stored = new byte[CRC_DIGITS + 1 + text.length];
    System.arraycopy(crc.getBytes(StandardCharsets.US_ASCII), 0, stored, 0, CRC_DIGITS);
    stored[CRC_DIGITS] = ' ';
    System.arraycopy(text, 0, stored, CRC_DIGITS + 1, text.length);
    return stored;
  }

  @Override
  public byte[] load(byte[] stored) throws BadLine {
    String text = new String(stored, StandardCharsets.US_ASCII);
    if (stored.length <= CRC_DIGITS + 1
        || stored[CRC_DIGITS] != ' '
        || !text.startsWith(crc(stored, CRC_DIGITS + 1))) {
      throw new BadLine("it was damaged: its check digits do not match");
    }
    try {
      byte[] sealed = Base64.getDecoder().decode(text.substring(CRC_DIGITS + 1));
      return key.decrypt(sealed, key.bound());
    } catch (IllegalArgumentException | GeneralSecurityException e) {
      throw new BadLine("it was changed by someone who does not have the key");
    }
  }

  private static String crc(byte[] bytes, int from) {
    CRC32 crc = new CRC32();
    crc.update(bytes, from, bytes.length - from);
    return HexFormat.of().toHexDigits((int) crc.getValue());
  }
}
