package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Assumptions;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;

/** The real process in a real terminal, for the tests of screens; needs tmux. */
abstract class RealTerminal {
  private static final long PATIENCE_SECONDS = 120;

  @TempDir Path folder;
  private String socket;

  @BeforeEach
  void open() throws Exception {
    boolean there;
    try {
      there = new ProcessBuilder("tmux", "-V").start().waitFor() == 0;
    } catch (IOException e) {
      there = false;
    }
    Assumptions.assumeTrue(there, "needs tmux");
    socket = folder.resolve("tmux").toString();
  }

  @AfterEach
  void close() throws Exception {
    if (socket != null) {
      tmux("kill-server");
    }
  }

  final String tmux(String... arguments) throws Exception {
    List<String> command = new ArrayList<>(List.of("tmux", "-S", socket, "-f", "/dev/null"));
    command.addAll(List.of(arguments));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    process.getOutputStream().close();
    String out = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    process.waitFor(10, TimeUnit.SECONDS);
    return out;
  }

  /** Starts a command in a terminal; a shell goes on when it has ended. */
  final void start(String environment, String command, String... options) throws Exception {
    Path arguments =
        Files.writeString(
            folder.resolve("arguments"),
            "-Xmx1g "
                + String.join(" ", ChildJava.OPTIONS)
                + " -cp \""
                + System.getProperty("java.class.path").replace("\\", "\\\\")
                + "\"");
    Path script =
        Files.writeString(
            folder.resolve("run.sh"),
            """
            stty -g > '%1$s/before'
            %2$s '%3$s/bin/java' '@%4$s' tiptoe.cli.Tiptoe %6$s --data '%1$s/data' %5$s &
            echo $! > '%1$s/pid'
            fg > /dev/null
            echo "exit $?"
            stty -g > '%1$s/after'
            cat
            """
                .formatted(
                    folder,
                    environment,
                    System.getProperty("java.home"),
                    arguments,
                    String.join(" ", options),
                    command));
    tmux("new-session", "-d", "-s", "exam", "-x", "80", "-y", "24", "bash -m " + script);
  }

  final String shown() throws Exception {
    return tmux("capture-pane", "-p", "-t", "exam");
  }

  final String await(Predicate<String> condition) throws Exception {
    long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(PATIENCE_SECONDS);
    String frame = shown();
    while (!condition.test(frame) && System.nanoTime() < end) {
      Thread.sleep(100);
      frame = shown();
    }
    assertTrue(condition.test(frame), frame + "\nall of it: " + all());
    return frame;
  }

  final String all() throws Exception {
    return tmux("capture-pane", "-p", "-S", "-", "-t", "exam");
  }

  final void assertTerminalIsAsBefore() throws IOException {
    assertEquals(
        Files.readString(folder.resolve("before")), Files.readString(folder.resolve("after")));
  }
}
