package tiptoe.cli;

import java.io.PrintStream;
import tiptoe.wording.PlainText;

/**
 * Where commands print: results to one stream, everything else to the other. Both are {@link
 * PlainText#stream}s.
 */
public final class Console {
  private static PrintStream results = System.out;
  private static PrintStream out = PlainText.stream(System.out);
  private static PrintStream err = PlainText.stream(System.err);

  private Console() {}

  static void use(PrintStream to, PrintStream rest) {
    results = to;
    out = PlainText.stream(to);
    err = PlainText.stream(rest);
  }

  static PrintStream out() {
    return out;
  }

  /** Prints JSON, a line, without changing what it says. */
  static void json(Object json) {
    out.println(PlainText.json(json.toString()));
  }

  /** Prints what is cleaned already and whose line ends its format says. */
  static void file(String content) {
    results.print(content);
    results.flush();
  }

  public static PrintStream err() {
    return err;
  }
}
