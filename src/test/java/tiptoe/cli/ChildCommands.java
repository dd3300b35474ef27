package tiptoe.cli;

import java.io.BufferedReader;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import java.util.Map;

/**
 * A process of its own that carries out one call after the other, for tests of what a user's
 * environment or class path does: starting Java for each call takes longer than the call.
 */
final class ChildCommands implements AutoCloseable {
  private static final String BETWEEN = "\u001F";
  private static final String DONE = "\u0004";

  private final Process process;
  private final BufferedReader answers;

  /** What a call printed, on either stream, and its exit code. */
  record Ran(int code, String out) {}

  /**
   * @param java how to start Java, with its class path but without a class
   * @param environment what is added to that of this process
   */
  ChildCommands(List<String> java, Map<String, String> environment) throws IOException {
    List<String> command = new ArrayList<>(java);
    command.add(ChildCommands.class.getName());
    ProcessBuilder builder =
        new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT);
    builder.environment().putAll(environment);
    process = builder.start();
    answers = process.inputReader(StandardCharsets.UTF_8);
  }

  Ran run(String... args) throws IOException {
    send(process.getOutputStream(), args);
    for (String line = answers.readLine(); line != null; line = answers.readLine()) {
      if (line.startsWith(DONE)) {
        String[] parts = line.substring(1).split(BETWEEN, 2);
        byte[] out = Base64.getDecoder().decode(parts[1]);
        return new Ran(Integer.parseInt(parts[0]), new String(out, StandardCharsets.UTF_8));
      }
    }
    throw new IOException("expected an answer to " + List.of(args) + ", the process has ended");
  }

  /** Puts a call to a process whose input is this. */
  static void send(OutputStream to, String... args) throws IOException {
    to.write((String.join(BETWEEN, args) + "\n").getBytes(StandardCharsets.UTF_8));
    to.flush();
  }

  @Override
  public void close() throws IOException {
    process.getOutputStream().close();
    try {
      process.waitFor();
    } catch (InterruptedException e) {
      process.destroyForcibly();
      Thread.currentThread().interrupt();
    }
  }

  /** The other end. */
  public static void main(String[] none) throws IOException {
    PrintStream answers = System.out;
    BufferedReader calls =
        new BufferedReader(new InputStreamReader(System.in, StandardCharsets.UTF_8));
    for (String call = calls.readLine(); call != null; call = calls.readLine()) {
      ByteArrayOutputStream out = new ByteArrayOutputStream();
      PrintStream both = new PrintStream(out, true, StandardCharsets.UTF_8);
      int code = Tiptoe.run(both, both, call.split(BETWEEN));
      answers.println(
          DONE + code + BETWEEN + Base64.getEncoder().encodeToString(out.toByteArray()));
    }
    System.exit(0);
  }
}
