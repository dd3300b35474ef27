package tiptoe.speech;

import java.util.List;

/**
 * How much sound as loud as what was said no word accounts for. Words that the recogniser takes for
 * silence are lost without a trace, and with them a denial, a side or another structure.
 */
final class LeftOver {
  private static final int FRAME = Recogniser.RATE / 100;

  /** Times of words are this uncertain, in s. */
  private static final double EDGE = 0.06;

  /** Power over that of the words above which a sound is as loud as they are: 8 dB less. */
  private static final double AS_LOUD = Math.pow(10, -0.8);

  private LeftOver() {}

  /**
   * Seconds of such sound.
   *
   * @param sound mono, 16 kHz
   * @param from where it begins, on the clock of the words, in s
   * @param words of phrases and filler
   */
  static double seconds(short[] sound, double from, List<Word> words) {
    int frames = sound.length / FRAME;
    boolean[] said = covered(frames, from, words, 0);
    double loud = 0;
    int count = 0;
    for (int i = 0; i < frames; i++) {
      if (said[i]) {
        loud += power(sound, i);
        count++;
      }
    }
    boolean[] near = covered(frames, from, words, EDGE);
    int left = 0;
    for (int i = 0; i < frames; i++) {
      left += !near[i] && power(sound, i) * count > loud * AS_LOUD ? 1 : 0;
    }
    return (double) left * FRAME / Recogniser.RATE;
  }

  private static boolean[] covered(int frames, double from, List<Word> words, double edge) {
    boolean[] covered = new boolean[frames];
    for (Word word : words) {
      int last = frame(word.end() + edge - from);
      for (int i = Math.max(0, frame(word.start() - edge - from)); i <= last && i < frames; i++) {
        covered[i] = true;
      }
    }
    return covered;
  }

  private static int frame(double seconds) {
    return (int) (seconds * Recogniser.RATE / FRAME);
  }

  /** Without what is constant in it: some microphones are off centre. */
  private static double power(short[] sound, int frame) {
    double sum = 0;
    double squares = 0;
    for (int i = frame * FRAME; i < (frame + 1) * FRAME; i++) {
      sum += sound[i];
      squares += (double) sound[i] * sound[i];
    }
    return squares / FRAME - sum / FRAME * sum / FRAME;
  }
}
