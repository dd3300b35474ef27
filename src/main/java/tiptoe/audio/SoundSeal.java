package tiptoe.audio;

import java.io.IOException;

/** Encrypts sound where it is stored, piece by piece, so that each is safe once it is written. */
public interface SoundSeal {
  /**
   * Encrypts a piece.
   *
   * @param place where it belongs: a piece that was moved elsewhere does not open
   */
  byte[] seal(byte[] piece, String place);

  /**
   * Decrypts a piece.
   *
   * @throws IOException when it is not what was sealed for that place
   */
  byte[] open(byte[] sealed, String place) throws IOException;
}
