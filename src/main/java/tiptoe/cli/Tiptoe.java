package tiptoe.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import picocli.CommandLine.TypeConversionException;
import picocli.CommandLine.UnmatchedArgumentException;
import tiptoe.protocol.Caution;
import tiptoe.screen.Wrap;
import tiptoe.session.ToolVersion;
import tiptoe.wording.PlainText;
import tiptoe.wording.ProblemWording;

/** The program. */
@Command(
    name = "tiptoe",
    mixinStandardHelpOptions = true,
    versionProvider = Tiptoe.Version.class,
    description =
        "Listens to a newborn's head-to-toe examination without a network, and turns what is said"
            + " into a record to correct and sign.",
    footerHeading = "%nFor the first time:%n",
    footer = {
      "  tiptoe ready              is everything there? says how to mend what is not",
      "  tiptoe soundcheck         tries the microphone on one sentence",
      "  tiptoe demo               hears an invented examination",
      "  tiptoe exam --from PATH   shows the screen, listening to recordings",
      "  tiptoe exam               listens through the microphone",
      "  tiptoe COMMAND --help     explains a command, with an example",
      "",
      Caution.TEXT
    },
    subcommands = {
      DemoCommand.class,
      ExamCommand.class,
      ReplayCommand.class,
      MeasureCommand.class,
      InterpretCommand.class,
      AssessCommand.class,
      RecordsCommand.class,
      RecordCommand.class,
      DueCommand.class,
      SettingsCommand.class,
      StatisticsCommand.class,
      BackupCommand.class,
      RestoreCommand.class,
      SayCommand.class,
      ReportCommand.class,
      SendCommand.class,
      ReviewCommand.class,
      SignCommand.class,
      KeyCommand.class,
      ReadyCommand.class,
      SoundcheckCommand.class,
      TeachCommand.class,
    })
public final class Tiptoe implements Runnable {
  /** Exit code when something could not be done. */
  static final int COULD_NOT = 1;

  /** Exit code when the call itself was wrong. */
  static final int WRONG_USE = 2;

  @Spec private CommandSpec spec;

  @Override
  public void run() {
    CommandLine.Help help = spec.commandLine().getHelp();
    PrintWriter out = spec.commandLine().getOut();
    out.print(help.description());
    out.println();
    out.println("Commands, listed with what they do by tiptoe --help:");
    Wrap.words(String.join(" ", HelpByTask.names()), 78)
        .forEach(names -> out.println("  " + names));
    out.print(help.footerHeading());
    out.print(help.footer());
    out.flush();
  }

  /** Runs a command and ends the process with its exit code where that is not 0. */
  public static void main(String[] args) {
    PrintStream out = new PrintStream(System.out, true, StandardCharsets.UTF_8);
    PrintStream err = new PrintStream(System.err, true, StandardCharsets.UTF_8);
    int code = run(out, err, args);
    out.flush();
    // Ending normally lets a build that runs the demonstration go on.
    if (code != 0) {
      System.exit(code);
    }
  }

  static CommandLine commandLine() {
    CommandLine line = HelpByTask.on(new CommandLine(new Tiptoe()));
    line.getSubcommands()
        .values()
        .forEach(command -> command.getCommandSpec().versionProvider(new Version()));
    return line.setCaseInsensitiveEnumValuesAllowed(true)
        .registerConverter(Path.class, Tiptoe::path);
  }

  private static Path path(String text) {
    try {
      return Path.of(text);
    } catch (InvalidPathException e) {
      throw new TypeConversionException(ProblemWording.of(e));
    }
  }

  static int run(PrintStream out, PrintStream err, String... args) {
    Console.use(out, err);
    CommandLine line =
        commandLine()
            .setOut(new PrintWriter(out, true, StandardCharsets.UTF_8))
            .setErr(new PrintWriter(err, true, StandardCharsets.UTF_8))
            .setParameterExceptionHandler((wrong, all) -> wrongUse(err, wrong))
            .setExecutionExceptionHandler(
                (problem, command, parsed) -> {
                  Console.err().println(ProblemWording.of(problem));
                  return COULD_NOT;
                });
    try {
      return line.execute(args);
    } catch (LinkageError | InternalError e) {
      // A library of the system or of the installation is missing: no fault of the call.
      Console.err().println("the installation is not whole: " + e);
      return COULD_NOT;
    } catch (OutOfMemoryError | StackOverflowError e) {
      Console.err().println("expected input that fits into memory, found more");
      return COULD_NOT;
    }
  }

  /** One message, what may have been meant, and where help is. */
  private static int wrongUse(PrintStream err, CommandLine.ParameterException wrong) {
    if (wrong instanceof UnmatchedArgumentException unmatched
        && !unmatched.getUnmatched().isEmpty()) {
      String word = unmatched.getUnmatched().get(0);
      err.println(
          PlainText.line("not expected: '" + word + "'")
              + Misspelt.meant(wrong.getCommandLine(), word)
                  .map(meant -> "; perhaps " + meant)
                  .orElse(""));
    } else {
      err.println(PlainText.lines(wrong.getMessage()));
    }
    err.println("see " + wrong.getCommandLine().getCommandSpec().qualifiedName() + " --help");
    return WRONG_USE;
  }

  static final class Version implements IVersionProvider {
    @Override
    public String[] getVersion() {
      return new String[] {"tiptoe " + ToolVersion.number()};
    }
  }
}
