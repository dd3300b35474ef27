package tiptoe.cli;

import java.nio.file.Path;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import tiptoe.settings.Settings;
import tiptoe.settings.SettingsFile;

/** The option that names a settings file; without it the one in the usual place is read. */
public final class SettingsOption {
  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "Settings file; see the command settings.")
  private Path file;

  /** The settings in force; a file that is not understood is refused as a whole. */
  Settings settings() {
    SettingsFile.Outcome outcome =
        file == null ? SettingsFile.readUsual(SettingsFile.usualPlace()) : SettingsFile.read(file);
    if (!outcome.problems().isEmpty()) {
      throw new IllegalArgumentException(
          outcome.problems().stream().map(Object::toString).collect(Collectors.joining("\n")));
    }
    return outcome.settings();
  }
}
