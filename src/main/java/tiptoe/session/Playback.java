package tiptoe.session;

import java.io.IOException;
import java.util.function.Consumer;

/** The sound of the record, to be listened to; times in s from the start of its sound. */
public interface Playback {
  /**
   * Plays a stretch; returns at once.
   *
   * @param speed 0.5 (half as fast) to 1
   * @param trouble told, from any thread, why it cannot be played
   */
  void play(double from, double to, double speed, Consumer<String> trouble);

  /** Falls silent. */
  void stop();

  /** Writes a stretch to a file of its own; gives its name. */
  String export(double from, double to) throws IOException;
}
