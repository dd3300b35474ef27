package tiptoe.session;

import java.io.IOException;
import tiptoe.wording.ProblemWording;

/**
 * One thing that was looked at to see whether the program is ready to be used.
 *
 * @param name what was looked at
 * @param state what it came to
 * @param found what was found
 * @param mend how to mend it; empty where nothing is to be mended
 */
public record ReadinessCheck(String name, State state, String found, String mend) {
  /** What a check came to. */
  public enum State {
    FINE("ok"),
    /** The program works, but less well. */
    WANTING("!"),
    /** The program cannot do its work. */
    MISSING("MISSING");

    private final String word;

    State(String word) {
      this.word = word;
    }
  }

  /** Looks at something, and says what was found. */
  interface Probe {
    String found() throws IOException;
  }

  public static ReadinessCheck fine(String name, String found) {
    return new ReadinessCheck(name, State.FINE, found, "");
  }

  public static ReadinessCheck wanting(String name, String found, String mend) {
    return new ReadinessCheck(name, State.WANTING, found, mend);
  }

  static ReadinessCheck missing(String name, String found, String mend) {
    return new ReadinessCheck(name, State.MISSING, found, mend);
  }

  /** A check of something the program cannot do without. */
  static ReadinessCheck of(String name, String mend, Probe probe) {
    try {
      return fine(name, probe.found());
    } catch (IOException | RuntimeException e) {
      return missing(name, ProblemWording.of(e), mend);
    }
  }

  /** The check as lines for people. */
  public String text() {
    String line = "%-8s %-12s %s%n".formatted(state.word, name, found);
    return mend.isEmpty() ? line : line + " ".repeat(22) + "to mend: " + mend + "\n";
  }
}
