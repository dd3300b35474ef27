package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import tiptoe.audio.SoundSeal;

/** Encrypts sound with the key of its record. */
record SealedSound(DataKey key) implements SoundSeal {
  @Override
  public byte[] seal(byte[] piece, String place) {
    return key.encrypt(piece, place.getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public byte[] open(byte[] sealed, String place) throws IOException {
    try {
      return key.decrypt(sealed, place.getBytes(StandardCharsets.UTF_8));
    } catch (GeneralSecurityException e) {
      throw new RecordProblem("sound " + place + " was damaged or changed", e);
    }
  }

  /** For a journal that is stored like this; null when it is not encrypted. */
  static SoundSeal of(LineCodec codec) {
    return codec instanceof EncryptedLines lines ? new SealedSound(lines.key()) : null;
  }
}
