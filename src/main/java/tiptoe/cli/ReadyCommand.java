package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import tiptoe.screen.TerminalReadiness;
import tiptoe.session.Readiness;

/** Says whether everything an examination needs is there. */
@Command(
    name = "ready",
    description = {
      "Says whether everything an examination needs is there.",
      "Where something is not, it says how to mend it.",
      "The exit code is 1 when something is missing that the program cannot do without."
    },
    footer = {"", "Example: tiptoe ready", "         tiptoe ready --no-microphone"})
final class ReadyCommand implements Callable<Integer> {
  @Option(
      names = "--no-microphone",
      description = "This machine only hears recordings, or reviews and reports.")
  private boolean withoutMicrophone;

  @Option(names = "--model", paramLabel = "DIR", description = "Another speech model folder.")
  private Path model;

  @Mixin private DataOption data;
  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    Readiness readiness = new Readiness(System.getenv(), model);
    readiness.program(option::settings, option::protocol);
    if (!withoutMicrophone) {
      readiness.microphone();
    }
    readiness.records(data.place());
    readiness.settings(option::settings);
    readiness.add(TerminalReadiness.checks(System.getenv()));
    readiness.checks().forEach(check -> Console.out().print(check.text()));
    Console.out().println(readiness.isReady() ? "ready" : "not ready: see MISSING above");
    return readiness.isReady() ? 0 : Tiptoe.COULD_NOT;
  }
}
