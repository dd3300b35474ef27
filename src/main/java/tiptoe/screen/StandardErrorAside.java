package tiptoe.screen;

import com.sun.jna.Library;
import com.sun.jna.Native;
import com.sun.jna.Platform;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * What libraries and the virtual machine write straight to standard error while the screen has the
 * terminal: it is put aside and told afterwards. Where standard error is no terminal, it is left
 * alone, and so it is on Windows.
 */
final class StandardErrorAside implements AutoCloseable {
  private static final int STANDARD_ERROR = 2;
  private static final int OWNER_READS_AND_WRITES = 0600;
  private static final int TOLD = 4_000;

  /** Of POSIX. */
  interface Descriptors extends Library {
    int isatty(int descriptor);

    int dup(int descriptor);

    int dup2(int from, int to);

    int creat(String path, int mode);

    int close(int descriptor);
  }

  private final Descriptors system;
  private final Path file;
  private final PrintStream err;
  private int terminal;

  private StandardErrorAside(Descriptors system, Path file, int terminal, PrintStream err) {
    this.err = err;
    this.system = system;
    this.file = file;
    this.terminal = terminal;
  }

  /**
   * Puts it aside from here on.
   *
   * @param err told what was put aside, when it is closed
   */
  static StandardErrorAside keepFromTerminal(PrintStream err) {
    if (Platform.isWindows()) {
      return new StandardErrorAside(null, null, -1, err);
    }
    try {
      Descriptors system = Native.load("c", Descriptors.class);
      if (system.isatty(STANDARD_ERROR) == 0) {
        return new StandardErrorAside(system, null, -1, err);
      }
      Path file = Files.createTempFile("tiptoe", ".log");
      int aside = system.creat(file.toString(), OWNER_READS_AND_WRITES);
      int terminal = aside < 0 ? -1 : system.dup(STANDARD_ERROR);
      if (terminal >= 0) {
        system.dup2(aside, STANDARD_ERROR);
        system.close(aside);
      }
      return new StandardErrorAside(system, file, terminal, err);
    } catch (IOException | UnsatisfiedLinkError e) {
      // Without it the examination goes on all the same.
      return new StandardErrorAside(null, null, -1, err);
    }
  }

  /** Gives standard error back and tells what was put aside; closing again does nothing. */
  @Override
  public synchronized void close() {
    if (terminal < 0) {
      return;
    }
    system.dup2(terminal, STANDARD_ERROR);
    system.close(terminal);
    terminal = -1;
    try {
      String text = Files.readString(file, StandardCharsets.ISO_8859_1).strip();
      Files.delete(file);
      if (!text.isEmpty()) {
        err.println(text.substring(Math.max(0, text.length() - TOLD)));
      }
    } catch (IOException e) {
      err.println("what was put aside of standard error is lost: " + e.getMessage());
    }
  }
}
