package tiptoe.measure;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Which lines of a script came out right. What was heard is laid beside what was said with the
 * fewest changes (Levenshtein's distance: one for a thing left out, put in or exchanged). A thing
 * put in counts against the line before it, at the beginning against the first one, and against
 * none where somebody else was spoken to in between.
 */
final class Alignment {
  /** What became of a line. */
  enum Outcome {
    /** All of it, and nothing else. */
    RIGHT,
    /** Something that was not said, instead of it or beside it. */
    WRONG,
    /** Not all of it, and nothing else. */
    MISSED
  }

  private static final byte BOTH = 0;
  private static final byte LEFT_OUT = 1;
  private static final byte PUT_IN = 2;

  private Alignment() {}

  /**
   * Judges each line.
   *
   * @param lines what each line holds, in order; a line may hold nothing
   * @param chatterBehind see {@link Script}
   * @param heard what came out, in order
   */
  static <T> List<Outcome> judge(List<List<T>> lines, List<Boolean> chatterBehind, List<T> heard) {
    List<T> said = new ArrayList<>();
    List<Integer> owners = new ArrayList<>();
    for (int line = 0; line < lines.size(); line++) {
      for (T thing : lines.get(line)) {
        said.add(thing);
        owners.add(line);
      }
    }
    boolean[] missed = new boolean[lines.size()];
    boolean[] wrong = new boolean[lines.size()];
    byte[][] ways = ways(said, heard);
    int i = said.size();
    int j = heard.size();
    while (i > 0 || j > 0) {
      if (ways[i][j] == PUT_IN) {
        int owner = owner(i, owners, lines.size(), chatterBehind);
        if (owner >= 0) {
          wrong[owner] = true;
        }
        j--;
      } else if (ways[i][j] == LEFT_OUT) {
        missed[owners.get(--i)] = true;
      } else {
        i--;
        j--;
        wrong[owners.get(i)] |= !said.get(i).equals(heard.get(j));
      }
    }
    List<Outcome> outcomes = new ArrayList<>();
    for (int line = 0; line < lines.size(); line++) {
      outcomes.add(wrong[line] ? Outcome.WRONG : missed[line] ? Outcome.MISSED : Outcome.RIGHT);
    }
    return outcomes;
  }

  /** The line that answers for a thing put in behind so many that were said; −1 for none. */
  private static int owner(int said, List<Integer> owners, int lines, List<Boolean> chatterBehind) {
    if (said == 0) {
      return lines == 0 ? -1 : 0;
    }
    int line = owners.get(said - 1);
    boolean atItsEnd = said == owners.size() || owners.get(said) != line;
    return atItsEnd && chatterBehind.get(line) ? -1 : line;
  }

  /** For each number of things said and heard, the last step of the cheapest way there. */
  private static <T> byte[][] ways(List<T> said, List<T> heard) {
    byte[][] ways = new byte[said.size() + 1][heard.size() + 1];
    Arrays.fill(ways[0], PUT_IN);
    int[] above = new int[heard.size() + 1];
    Arrays.setAll(above, j -> j);
    for (int i = 1; i <= said.size(); i++) {
      int[] here = new int[heard.size() + 1];
      here[0] = i;
      ways[i][0] = LEFT_OUT;
      for (int j = 1; j <= heard.size(); j++) {
        int both = above[j - 1] + (said.get(i - 1).equals(heard.get(j - 1)) ? 0 : 1);
        int leftOut = above[j] + 1;
        int putIn = here[j - 1] + 1;
        here[j] = Math.min(both, Math.min(leftOut, putIn));
        ways[i][j] = here[j] == both ? BOTH : here[j] == leftOut ? LEFT_OUT : PUT_IN;
      }
      above = here;
    }
    return ways;
  }
}
