package tiptoe.cli;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import tiptoe.screen.review.Reviewer;
import tiptoe.session.Home;
import tiptoe.settings.Settings;
import tiptoe.settings.SettingsFile;

/** Shows what can be set and what is. */
@Command(
    name = "settings",
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

  @Override
  public Integer call() throws IOException {
    Settings settings = option.settings();
    if (who.isSaid()) {
      return remember(settings);
    }
    Console.out().println("# looked for at " + Home.settingsFile());
    Console.out().print(SettingsFile.text(settings));
    SettingsFile.changed(settings).forEach(Console.err()::println);
    return 0;
  }

  private int remember(Settings settings) throws IOException {
    Reviewer said =
        who.of(settings).orElseThrow(() -> new WrongUse("expected --as NAME, found none"));
    SettingsFile.remember(option.place(), said.name(), said.role());
    Console.out().println("kept in " + option.place() + ": " + said);
    return 0;
  }
}
