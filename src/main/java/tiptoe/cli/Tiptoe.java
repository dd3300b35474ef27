package tiptoe.cli;

import java.io.PrintStream;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.function.Function;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.IVersionProvider;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;
import picocli.CommandLine.UnmatchedArgumentException;
import tiptoe.exam.journal.KeepAudio;
import tiptoe.measure.Split;
import tiptoe.protocol.Caution;
import tiptoe.screen.Wrap;
import tiptoe.session.ToolVersion;
import tiptoe.wording.PlainText;
import tiptoe.wording.ProblemWording;

/** The program. */
@Command(
    name = "tiptoe",
    scope = CommandLine.ScopeType.INHERIT,
    mixinStandardHelpOptions = true,
    versionProvider = Tiptoe.Version.class,
    description =
        "Listens to a newborn's head-to-toe examination without a network, and turns what is said"
            + " into a record to correct and sign.",
    footer = {
      "",
      "For the first time:",
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
    return HelpByTask.on(new CommandLine(new Tiptoe()))
        .setCaseInsensitiveEnumValuesAllowed(true)
        .registerConverter(Path.class, reading(Path::of))
        .registerConverter(LocalDate.class, reading(Tiptoe::day))
        .registerConverter(KeepAudio.class, reading(KeepAudio::of))
        .registerConverter(Split.class, reading(Split::ofId));
  }

  private static <T> ITypeConverter<T> reading(Function<String, T> reader) {
    return text -> {
      try {
        return reader.apply(text);
      } catch (IllegalArgumentException e) {
        throw new WrongValue.Told(ProblemWording.of(e));
      }
    };
  }

  /** A day, such as 2026-03-01; nothing is today. */
  private static LocalDate day(String text) {
    try {
      return text.isEmpty() ? LocalDate.now() : LocalDate.parse(text);
    } catch (DateTimeParseException e) {
      throw new IllegalArgumentException("expected a day such as 2026-03-01, found " + text, e);
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
                  if (problem instanceof WrongUse) {
                    return wrongUse(
                        err, new CommandLine.ParameterException(command, problem.getMessage()));
                  }
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
      err.println(PlainText.lines(WrongValue.of(wrong)));
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
