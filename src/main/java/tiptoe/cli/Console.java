package tiptoe.cli;

import java.io.PrintStream;

/** Where commands print: results to one stream, everything else to the other. */
public final class Console {
  private static PrintStream out = System.out;
  private static PrintStream err = System.err;

  private Console() {}

  static void use(PrintStream results, PrintStream rest) {
    out = results;
    err = rest;
  }

  static PrintStream out() {
    return out;
  }

  public static PrintStream err() {
    return err;
  }
}
