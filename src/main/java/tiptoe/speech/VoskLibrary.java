package tiptoe.speech;

import com.sun.jna.Library;
import com.sun.jna.Pointer;

/**
 * The functions of the Vosk library 0.3.45 that are used here, as its {@code vosk_api.h} declares
 * them. Pointers are not checked by the library: only {@link SpeechModel} and {@link Recogniser}
 * call it.
 */
interface VoskLibrary extends Library {
  void vosk_set_log_level(int level);

  /** Null when the folder cannot be loaded. */
  Pointer vosk_model_new(String folder);

  void vosk_model_free(Pointer model);

  Pointer vosk_recognizer_new(Pointer model, float rate);

  Pointer vosk_recognizer_new_grm(Pointer model, float rate, String phrases);

  void vosk_recognizer_set_words(Pointer recogniser, int on);

  /** More than 0 makes results list alternatives with their costs instead of confidences. */
  void vosk_recognizer_set_max_alternatives(Pointer recogniser, int most);

  /** 1 at the end of an utterance, 0 within one, −1 after a failure inside. */
  int vosk_recognizer_accept_waveform_s(Pointer recogniser, short[] samples, int length);

  String vosk_recognizer_result(Pointer recogniser);

  String vosk_recognizer_partial_result(Pointer recogniser);

  String vosk_recognizer_final_result(Pointer recogniser);

  void vosk_recognizer_free(Pointer recogniser);
}
