package tiptoe.screen;

import com.googlecode.lanterna.TerminalSize;
import com.googlecode.lanterna.terminal.ansi.UnixTerminal;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;

/**
 * A terminal that asks the system for its size. Asking the terminal itself, as Lanterna does, waits
 * for an answer among the keys, and swallows one that is pressed meanwhile.
 */
final class SizedTerminal extends UnixTerminal {
  SizedTerminal(InputStream in, OutputStream out) throws IOException {
    super(in, out, StandardCharsets.UTF_8, CtrlCBehaviour.TRAP);
  }

  @Override
  protected TerminalSize findTerminalSize() throws IOException {
    String[] numbers = runSTTYCommand("size").strip().split("\\s+");
    try {
      int rows = Integer.parseInt(numbers[0]);
      int columns = Integer.parseInt(numbers[1]);
      return rows > 0 && columns > 0 ? new TerminalSize(columns, rows) : super.findTerminalSize();
    } catch (NumberFormatException | ArrayIndexOutOfBoundsException e) {
      return super.findTerminalSize();
    }
  }
}
