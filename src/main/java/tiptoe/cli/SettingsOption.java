package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import tiptoe.files.BoundedFile;
import tiptoe.session.Home;
import tiptoe.settings.Settings;
import tiptoe.settings.SettingsFile;

/** The option that names a settings file; without it the one in the usual place is read. */
public final class SettingsOption {
  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "Settings file; see the command settings.")
  private Path file;

  /** Read once, so that one run of a command goes by the same settings from end to end. */
  private Settings read;

  /** The file that is read. */
  Path place() {
    return file == null ? Home.settingsFile() : file;
  }

  /** The settings in force; a file that is not understood is refused as a whole. */
  synchronized Settings settings() {
    if (read != null) {
      return read;
    }
    Path usual = Home.settingsFile();
    if (file != null || Files.exists(usual)) {
      try {
        BoundedFile.SETTINGS.require(file == null ? usual : file);
      } catch (NoSuchFileException e) {
        // Told below.
      } catch (IOException e) {
        throw new IllegalArgumentException(e.getMessage(), e);
      }
    }
    SettingsFile.Outcome outcome =
        file == null ? SettingsFile.readUsual(usual) : SettingsFile.read(file);
    if (!outcome.problems().isEmpty()) {
      throw new IllegalArgumentException(
          outcome.problems().stream().map(Object::toString).collect(Collectors.joining("\n")));
    }
    read = outcome.settings();
    return read;
  }
}
