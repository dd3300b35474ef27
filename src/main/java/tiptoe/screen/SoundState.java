package tiptoe.screen;

/**
 * How the sound comes in.
 *
 * @param loudness of the last moment, in steps from 0 to {@link #LOUDEST}; one more means that the
 *     sound was cut off because it was too loud
 * @param seconds length of the sound so far, in s
 * @param listening whether sound is coming in; false before the model is there and after the end
 * @param trouble what is wrong with the sound or its keeping; empty when all is well
 * @param kept whether the sound is kept with the record
 * @param speaking whether a voice of the tool speaks, so that nothing is heard
 */
public record SoundState(
    int loudness, int seconds, boolean listening, String trouble, boolean kept, boolean speaking) {
  /** The loudest step that is not cut off. */
  public static final int LOUDEST = 10;

  static final SoundState NONE = new SoundState(0, 0, false, "", false, false);

  private static final double QUIETEST_DB = -60;
  private static final double DB_A_STEP = 5;

  SoundState with(int step, int length) {
    return new SoundState(step, length, listening, trouble, kept, speaking);
  }

  SoundState withListening(boolean now) {
    return new SoundState(loudness, seconds, now, trouble, kept, speaking);
  }

  SoundState withTrouble(String now) {
    return new SoundState(loudness, seconds, listening, now, kept, speaking);
  }

  SoundState withKept(boolean now) {
    return new SoundState(loudness, seconds, listening, trouble, now, speaking);
  }

  SoundState withSpeaking(boolean now) {
    return new SoundState(loudness, seconds, listening, trouble, kept, now);
  }

  /** The step of the meter for a level in dB below full scale. */
  public static int loudness(double rmsDb, boolean clipping) {
    return clipping
        ? LOUDEST + 1
        : (int) Math.max(0, Math.min(LOUDEST, Math.round((rmsDb - QUIETEST_DB) / DB_A_STEP)));
  }
}
