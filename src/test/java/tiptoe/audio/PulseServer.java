package tiptoe.audio;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import tiptoe.ChildJava;

/**
 * A private PulseAudio server whose only device is a null sink, for tests of the real sound path:
 * what is played into the sink is heard by the microphone of every program that is started with
 * {@link #environment()}. Java Sound reads that only when the JVM starts, so such a test runs its
 * subject in a JVM of its own.
 */
public final class PulseServer implements AutoCloseable {
  private static final String SINK = "module-null-sink sink_name=cot rate=16000 channels=1";
  private static final long PATIENCE_SECONDS = 30;

  private final Path folder;
  private Process server;

  private PulseServer(Path folder) {
    this.folder = folder;
  }

  /** Why no server can be started here, or an empty text if one can. */
  public static String missing() {
    List<String> absent =
        Stream.of("pulseaudio", "pactl", "paplay").filter(name -> !installed(name)).toList();
    return absent.isEmpty() ? "" : "not installed: " + String.join(", ", absent);
  }

  /** Starts a server that keeps its files in a folder, whose path must be short (< 80 letters). */
  public static PulseServer start(Path folder) throws IOException, InterruptedException {
    Files.writeString(
        folder.resolve("asoundrc"), "pcm.!default { type pulse }\nctl.!default { type pulse }\n");
    PulseServer pulse = new PulseServer(folder);
    pulse.restart();
    return pulse;
  }

  /** Starts the server again after {@link #kill()}. */
  public void restart() throws IOException, InterruptedException {
    Files.deleteIfExists(socket());
    List<String> command =
        List.of(
            "pulseaudio",
            "-n",
            "--daemonize=no",
            "--use-pid-file=no",
            "--exit-idle-time=-1",
            "--load=module-native-protocol-unix auth-anonymous=1 socket=" + socket(),
            "--load=" + SINK);
    server = builder(command).redirectOutput(folder.resolve("log").toFile()).start();
    for (int tries = 0; run("pactl", "info") != 0; tries++) {
      if (tries == 300 || !server.isAlive()) {
        throw new IOException("no server came up: " + Files.readString(folder.resolve("log")));
      }
      Thread.sleep(100);
    }
  }

  /** What a program must find in its environment to hear and play through this server. */
  public Map<String, String> environment() {
    return Map.of(
        "PULSE_SERVER", "unix:" + socket(),
        "PULSE_COOKIE", folder.resolve("cookie").toString(),
        "PULSE_RUNTIME_PATH", folder.toString(),
        "PULSE_STATE_PATH", folder.toString(),
        "ALSA_CONFIG_PATH", folder.resolve("asoundrc").toString());
  }

  /** Plays a file into the sink, and waits until it has been heard. */
  public void play(Path wav) throws IOException, InterruptedException {
    run("paplay", wav.toString());
  }

  /** Waits until some program has begun to play into the sink, and then until none does. */
  public void awaitQuiet() throws IOException, InterruptedException {
    boolean played = false;
    for (int tries = 0; !played || !players().isBlank(); tries++) {
      if (tries == 10 * PATIENCE_SECONDS) {
        throw new IOException("expected a sound that ends, found " + players());
      }
      Thread.sleep(100);
      played |= !players().isBlank();
    }
  }

  private String players() throws IOException {
    Process process = builder(List.of("pactl", "list", "short", "sink-inputs")).start();
    return new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
  }

  /** Takes the device away, as when a microphone is pulled out. */
  public void unplug() throws IOException, InterruptedException {
    run("pactl", "unload-module", "module-null-sink");
  }

  /** Brings the device back. */
  public void plugIn() throws IOException, InterruptedException {
    List<String> command = new ArrayList<>(List.of("pactl", "load-module"));
    command.addAll(List.of(SINK.split(" ")));
    run(command.toArray(String[]::new));
  }

  /** Ends the server, as when it crashes. */
  public void kill() throws InterruptedException {
    server.destroyForcibly().waitFor();
  }

  /** A program of ours in a JVM of its own, on this server, with the class path of this one. */
  public Process java(Class<?> main, String... arguments) throws IOException {
    List<String> command = ChildJava.command();
    command.addAll(List.of("-cp", System.getProperty("java.class.path"), main.getName()));
    command.addAll(List.of(arguments));
    return builder(command).start();
  }

  @Override
  public void close() {
    server.destroy();
    try {
      if (!server.waitFor(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
        kill();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private Path socket() {
    return folder.resolve("native");
  }

  private int run(String... command) throws IOException, InterruptedException {
    Process process =
        builder(List.of(command)).redirectOutput(ProcessBuilder.Redirect.DISCARD).start();
    return process.waitFor();
  }

  private ProcessBuilder builder(List<String> command) {
    ProcessBuilder builder = new ProcessBuilder(command).redirectErrorStream(true);
    builder.environment().putAll(environment());
    return builder;
  }

  private static boolean installed(String program) {
    return Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
        .anyMatch(path -> Files.isExecutable(Path.of(path, program)));
  }
}
