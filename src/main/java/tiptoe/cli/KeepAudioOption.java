package tiptoe.cli;

import java.util.Optional;
import picocli.CommandLine.Option;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/** The option that says how long sound is kept; without it the settings say so. */
final class KeepAudioOption {
  @Option(
      names = "--keep-audio",
      paramLabel = "WHEN",
      description = "never, until-signed or always; else as the settings say.")
  private KeepAudio chosen;

  /** What was asked for now; else what was asked for when it was recorded; else the settings. */
  KeepAudio of(Settings settings, ExamRecord record) {
    return chosen != null
        ? chosen
        : KeepAudio.chosen(record).orElseGet(() -> KeepAudio.of(settings.get(Setting.KEEP_AUDIO)));
  }

  /** What was asked for now. */
  Optional<KeepAudio> chosen() {
    return Optional.ofNullable(chosen);
  }
}
