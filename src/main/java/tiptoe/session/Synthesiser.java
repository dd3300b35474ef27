package tiptoe.session;

import java.io.File;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/** Speaks by a program of the system, as the settings name it. */
public final class Synthesiser {
  private static final String TEXT = "{text}";

  private final List<String> command;

  Synthesiser(Settings settings) {
    command = List.of(settings.get(Setting.SYNTHESISER).strip().split("\\s+"));
  }

  /** What to tell where a voice is wanted and its program is not there; else empty. */
  public static Optional<String> missing(Settings settings) {
    String program = new Synthesiser(settings).command.get(0);
    return settings.is(Setting.SPOKEN_ANSWERS, "off") || installed(program)
        ? Optional.empty()
        : Optional.of("answers are not spoken: expected the program " + program + ", found none");
  }

  private static boolean installed(String program) {
    return Files.isExecutable(Path.of(program)) && program.contains(File.separator)
        || Stream.of(System.getenv().getOrDefault("PATH", "").split(File.pathSeparator))
            .anyMatch(
                folder ->
                    Files.isExecutable(Path.of(folder, program))
                        || Files.isExecutable(Path.of(folder, program + ".exe")));
  }

  /** How long a voice may take: a slow one has less than 5 letters a second, and has to start. */
  static Duration longest(String text) {
    return Duration.ofSeconds(5).plusMillis(200L * text.length());
  }

  /**
   * Has a text spoken. A program that takes longer than {@link #longest} is ended.
   *
   * @return the sound; empty where the program has played it itself
   */
  Optional<Pcm> speak(String text) throws IOException, InterruptedException {
    List<String> call = new ArrayList<>();
    command.forEach(word -> call.add(word.equals(TEXT) ? text : word));
    Path wav = Files.createTempFile("tiptoe", ".wav");
    try {
      Process process =
          new ProcessBuilder(call)
              .redirectOutput(wav.toFile())
              .redirectError(ProcessBuilder.Redirect.DISCARD)
              .start();
      write(process, command.contains(TEXT) ? "" : text);
      try {
        if (!process.waitFor(longest(text).toMillis(), TimeUnit.MILLISECONDS)) {
          throw new IOException("expected the voice to end, found it still at work");
        }
      } finally {
        // Until the system has ended it, it may still sound.
        process.destroyForcibly().waitFor(1, TimeUnit.SECONDS);
      }
      return Files.size(wav) == 0 ? Optional.empty() : Optional.of(AudioFile.read(wav));
    } finally {
      Files.delete(wav);
    }
  }

  private static void write(Process process, String text) {
    try (OutputStream input = process.getOutputStream()) {
      input.write(text.getBytes(StandardCharsets.UTF_8));
    } catch (IOException e) {
      // It did not want all of the text; what it says is heard all the same.
      return;
    }
  }
}
