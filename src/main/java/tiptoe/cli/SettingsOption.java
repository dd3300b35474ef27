package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import picocli.CommandLine.Option;
import tiptoe.protocol.Protocol;
import tiptoe.session.Home;
import tiptoe.settings.Settings;

/** The option that names a settings file; without it the one in the usual place is read. */
public final class SettingsOption {
  @Option(
      names = "--config",
      paramLabel = "FILE",
      description = "Settings file; see the command settings.")
  private Path file;

  /** Read once, so that one run of a command goes by the same settings from end to end. */
  private Settings read;

  Path place() {
    return file == null ? Home.settingsFile() : file;
  }

  /**
   * The examination as it is done here: ours, with what the ward adds.
   *
   * @throws IOException when the file of the ward cannot be read
   * @throws IllegalArgumentException when it is not understood; it is refused as a whole
   */
  Protocol protocol() throws IOException {
    return Home.protocol(settings(), place());
  }

  /** The settings in force; a file that is not understood is refused as a whole. */
  synchronized Settings settings() {
    if (read == null) {
      read = Home.settings(file);
    }
    return read;
  }
}
