package tiptoe.measure;

import java.util.ArrayList;
import java.util.List;

/**
 * What is said in a recording. In the file each line is one thing dictated; a line in brackets is
 * said too, but to somebody else; {@code #} begins a comment.
 *
 * @param lines what is dictated, without blank lines
 * @param chatterBehind for each line, whether something is said to somebody else right behind it
 */
public record Script(List<String> lines, List<Boolean> chatterBehind) {
  public Script {
    lines = List.copyOf(lines);
    chatterBehind = List.copyOf(chatterBehind);
  }

  public static Script parse(List<String> file) {
    List<String> lines = new ArrayList<>();
    List<Boolean> chatter = new ArrayList<>();
    for (String raw : file) {
      String line = raw.replaceFirst("#.*", "").strip();
      if (line.startsWith("(") && line.endsWith(")")) {
        if (!lines.isEmpty()) {
          chatter.set(lines.size() - 1, true);
        }
      } else if (!line.isEmpty()) {
        lines.add(line);
        chatter.add(false);
      }
    }
    return new Script(lines, chatter);
  }
}
