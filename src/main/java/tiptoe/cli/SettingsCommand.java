package tiptoe.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import tiptoe.session.Home;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.settings.SettingsFile;

/** Shows what can be set and what is. */
@Command(
    name = "settings",
    mixinStandardHelpOptions = true,
    description = {
      "Shows the settings in force, as a file to start from.",
      "It says too where that file is looked for."
    },
    footer = {"", "Example: tiptoe settings > tiptoe.yaml"})
final class SettingsCommand implements Callable<Integer> {
  @Mixin private SettingsOption option;

  @Override
  public Integer call() {
    Settings settings = option.settings();
    Console.out().println("# looked for at " + Home.settingsFile());
    Console.out().print(SettingsFile.text(settings));
    for (Setting setting : Setting.values()) {
      if (!settings.is(setting, setting.choices().get(0))) {
        Console.err().println("changed: " + setting.path() + " " + settings.get(setting));
      }
    }
    return 0;
  }
}
