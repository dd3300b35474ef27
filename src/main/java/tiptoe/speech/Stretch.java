package tiptoe.speech;

import com.sun.jna.Pointer;
import java.util.Arrays;

/** Hears one stretch of sound as a whole. */
final class Stretch {
  private Stretch() {}

  /**
   * What the library gives for it, as JSON.
   *
   * @param recogniser a new one; it is freed
   * @param alternatives most of them that are given
   */
  static String heard(VoskLibrary library, Pointer recogniser, short[] sound, int alternatives) {
    try {
      library.vosk_recognizer_set_words(recogniser, 1);
      library.vosk_recognizer_set_max_alternatives(recogniser, alternatives);
      for (int at = 0; at < sound.length; at += Recogniser.PIECE) {
        short[] piece =
            Arrays.copyOfRange(sound, at, Math.min(sound.length, at + Recogniser.PIECE));
        library.vosk_recognizer_accept_waveform_s(recogniser, piece, piece.length);
      }
      return library.vosk_recognizer_final_result(recogniser);
    } finally {
      library.vosk_recognizer_free(recogniser);
    }
  }
}
