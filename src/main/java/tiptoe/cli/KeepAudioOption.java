package tiptoe.cli;

import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.TypeConversionException;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/** The option that says how long sound is kept; without it the settings say so. */
final class KeepAudioOption {
  @Option(
      names = "--keep-audio",
      paramLabel = "WHEN",
      converter = Choice.class,
      description = "never, until-signed or always; else as the settings say.")
  private KeepAudio chosen;

  KeepAudio of(Settings settings) {
    return chosen != null ? chosen : KeepAudio.of(settings.get(Setting.KEEP_AUDIO));
  }

  static final class Choice implements ITypeConverter<KeepAudio> {
    @Override
    public KeepAudio convert(String text) {
      try {
        return KeepAudio.of(text);
      } catch (IllegalArgumentException e) {
        throw new TypeConversionException(e.getMessage());
      }
    }
  }
}
