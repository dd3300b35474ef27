package tiptoe.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.stream.Collectors;
import picocli.CommandLine.Option;
import tiptoe.files.BoundedFile;
import tiptoe.protocol.LocalProtocol;
import tiptoe.protocol.Protocol;
import tiptoe.session.Home;
import tiptoe.settings.Setting;
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

  /**
   * The examination as it is done here: ours, with what the ward adds.
   *
   * @throws IOException when the file of the ward cannot be read
   * @throws IllegalArgumentException when it is not understood; it is refused as a whole
   */
  Protocol protocol() throws IOException {
    String named = settings().get(Setting.LOCAL_PROTOCOL);
    if (named.isEmpty()) {
      return Protocol.standard();
    }
    Path local = place().toAbsolutePath().resolveSibling(named);
    try {
      return Protocol.with(
          LocalProtocol.parse(
              local.toString(), BoundedFile.PROTOCOL.text(local), Protocol.standard()));
    } catch (NoSuchFileException e) {
      throw new IOException(
          "expected the local protocol that the settings name, found none at " + local, e);
    } catch (CharacterCodingException e) {
      throw new IOException("expected UTF-8 text, found other bytes in " + local, e);
    }
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
