package tiptoe.screen;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.DefaultTerminalFactory;
import com.googlecode.lanterna.terminal.Terminal;
import java.io.Console;
import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;

/** The terminal this process runs in. */
public final class Terminals {
  private Terminals() {}

  /** Whether there is a terminal that a screen can be drawn on. */
  public static boolean usable(Map<String, String> environment) {
    String term = environment.getOrDefault("TERM", "");
    return isConsole() && (isWindows() || !term.isEmpty() && !term.equals("dumb"));
  }

  // From Java 22 on there is a console even where nobody sits at it; it then says so.
  private static boolean isConsole() {
    Console console = System.console();
    try {
      return console != null && (boolean) Console.class.getMethod("isTerminal").invoke(console);
    } catch (NoSuchMethodException e) {
      return true;
    } catch (ReflectiveOperationException e) {
      return false;
    }
  }

  /** The terminal; Ctrl-C is a key in it and does not end the process. */
  public static Terminal open() throws IOException {
    // Straight to the descriptor: a build tool may have put something of its own into System.out.
    FileOutputStream out = new FileOutputStream(FileDescriptor.out);
    if (isWindows()) {
      return new DefaultTerminalFactory(out, System.in, StandardCharsets.UTF_8)
          .setForceTextTerminal(true)
          .createTerminal();
    }
    return new SizedTerminal(System.in, out);
  }

  /** The size of the terminal, which is left as it is. */
  public static TerminalSize size() throws IOException {
    Terminal terminal = open();
    try {
      return terminal.getTerminalSize();
    } finally {
      terminal.close();
    }
  }

  private static boolean isWindows() {
    return System.getProperty("os.name").startsWith("Windows");
  }
}
