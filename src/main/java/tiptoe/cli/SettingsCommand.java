package tiptoe.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tiptoe.screen.review.Reviewer;
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
      "It says too where that file is looked for.",
      "With --as it keeps in that file who works here."
    },
    footer = {
      "",
      "Example: tiptoe settings > tiptoe.yaml",
      "         tiptoe settings --as \"Rowan Reed\" --role registrar"
    })
final class SettingsCommand implements Callable<Integer> {
  @Mixin private SettingsOption option;
  @Mixin private WhoOption who;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException {
    Settings settings = option.settings();
    if (who.isSaid()) {
      return remember(settings);
    }
    Console.out().println("# looked for at " + Home.settingsFile());
    Console.out().print(SettingsFile.text(settings));
    for (Setting setting : Setting.values()) {
      if (!setting.choices().get(0).isEmpty() && !settings.is(setting, setting.choices().get(0))) {
        Console.err().println("changed: " + setting.path() + " " + settings.get(setting));
      }
    }
    return 0;
  }

  private int remember(Settings settings) throws IOException {
    Reviewer said =
        who.of(settings)
            .orElseThrow(
                () -> new ParameterException(spec.commandLine(), "expected --as NAME, found none"));
    SettingsFile.remember(option.place(), said.name(), said.role());
    Console.out().println("kept in " + option.place() + ": " + said);
    return 0;
  }
}
