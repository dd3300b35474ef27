package tiptoe.screen;

import com.googlecode.lanterna.TerminalSize;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import tiptoe.session.ReadinessCheck;
import tiptoe.wording.ProblemWording;

/** How the screen will look on this terminal. */
public final class TerminalReadiness {
  private TerminalReadiness() {}

  /** What was found of the signs it has, and of its size. */
  public static List<ReadinessCheck> checks(Map<String, String> environment) {
    return List.of(
        locale(environment),
        Terminals.usable(environment)
            ? size()
            : ReadinessCheck.wanting(
                "terminal",
                "no terminal to draw on, so an examination is shown line by line",
                "start it in a terminal window; TERM must name one"));
  }

  private static ReadinessCheck locale(Map<String, String> environment) {
    if (!Look.isUtf8(environment)) {
      return ReadinessCheck.wanting(
          "locale", "it does not say UTF-8, so plain signs are used", "LANG=C.UTF-8");
    }
    return Look.of(environment, false).ascii()
        ? ReadinessCheck.wanting(
            "locale",
            "UTF-8, but plain signs are used, since the terminal has few",
            "use a terminal window; TERM says " + environment.get("TERM"))
        : ReadinessCheck.fine("locale", "UTF-8");
  }

  private static ReadinessCheck size() {
    try {
      TerminalSize size = Terminals.size();
      String found = size.getColumns() + " columns, " + size.getRows() + " lines";
      return size.getColumns() < Canvas.COLUMNS || size.getRows() < Canvas.ROWS
          ? ReadinessCheck.wanting(
              "terminal", found, "make the window 80 columns by 24 lines or larger")
          : ReadinessCheck.fine("terminal", found);
    } catch (IOException e) {
      return ReadinessCheck.wanting(
          "terminal", "cannot tell its size: " + ProblemWording.of(e), "");
    }
  }
}
