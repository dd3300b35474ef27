package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tiptoe.measure.Baseline;
import tiptoe.measure.ComparableMeaning;
import tiptoe.measure.Condition;
import tiptoe.measure.Figures;
import tiptoe.measure.MeasureJson;
import tiptoe.measure.MeasureRun;
import tiptoe.measure.Noises;
import tiptoe.measure.Recordings;
import tiptoe.measure.ReviewedRecords;
import tiptoe.measure.Score;
import tiptoe.measure.Split;
import tiptoe.measure.Tables;
import tiptoe.measure.TimedUtterance;
import tiptoe.session.Engine;
import tiptoe.session.Home;
import tiptoe.session.MeasuredSession;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;

/** Tells how well recordings are heard. */
@Command(
    name = "measure",
    mixinStandardHelpOptions = true,
    description = {
      "Tells how well recordings are heard, in figures.",
      "FOLDER holds name.wav with what is said in name.txt, one thing a line, or with the answers"
          + " expected of it in name.json, or both."
    },
    footer = {
      "",
      "Example: tiptoe measure demo-audio",
      "         tiptoe measure clips --noise cries --snr 15,10,5 --split held-out",
      "         tiptoe measure talk --off-script --json",
      "         tiptoe measure --reviewed"
    })
final class MeasureCommand implements Callable<Integer> {
  @Parameters(paramLabel = "FOLDER", arity = "0..*", description = "Folders of recordings.")
  private List<Path> folders = new ArrayList<>();

  @Option(
      names = "--noise",
      paramLabel = "DIR",
      description = "Recordings of noise, to be mixed in one for each recording, in turn.")
  private Path noise;

  @Option(
      names = "--snr",
      paramLabel = "DB",
      split = ",",
      description = "How far the speech is above the noise, in dB (default: 15,10,5).")
  private List<Double> ratios;

  @Option(
      names = "--seed",
      paramLabel = "NUMBER",
      defaultValue = "1",
      description = "Decides which stretch of which noise; the same one gives the same sound.")
  private long seed;

  @Option(
      names = "--pause",
      paramLabel = "SECONDS",
      defaultValue = "0",
      description = "Silence to put before and behind each recording (default: ${DEFAULT-VALUE}).")
  private double pause;

  @Option(
      names = "--off-script",
      description = "Nothing that is said belongs to an examination: count what is accepted.")
  private boolean offScript;

  @Option(
      names = "--split",
      paramLabel = "HALF",
      defaultValue = "all",
      converter = SplitConverter.class,
      description = "train, held-out or all: the half to use, by file names (default: all).")
  private Split split;

  @Option(
      names = "--beside-stock",
      description = "Also hear them by the model's own run-time grammar, given just what is said.")
  private boolean besideStock;

  @Option(
      names = "--baseline",
      paramLabel = "FILE",
      description = "Fail when a figure is worse than this file allows.")
  private Path baseline;

  @Option(
      names = "--threads",
      paramLabel = "N",
      description = "How many recordings to hear at once (default: one a core).")
  private Integer threads;

  @Option(
      names = "--reviewed",
      description = "Tell how often reviewers found it right, from the signed records.")
  private boolean reviewed;

  @Option(
      names = "--json",
      description = "Print one JSON object for each recording and condition, and a summary.")
  private boolean json;

  @Option(names = "--model", paramLabel = "DIR", description = "Another speech model folder.")
  private Path model;

  @Mixin private DataOption data;
  @Mixin private SettingsOption option;
  @Spec private CommandSpec spec;

  @Override
  public Integer call() throws IOException, InterruptedException {
    check();
    if (reviewed) {
      return printReviewed();
    }
    Settings settings = option.settings();
    Home home = Home.of(option.protocol());
    Understanding understanding = Understanding.load(home);
    Baseline least = baseline == null ? null : Baseline.read(baseline);
    Noises noises = noise == null ? null : Noises.in(noise, split, seed);
    List<MeasureRun.Task> tasks = new ArrayList<>();
    for (Path folder : folders) {
      List<Path> files = Recordings.in(folder, split);
      for (Condition condition : conditions()) {
        for (int place = 0; place < files.size(); place++) {
          tasks.add(new MeasureRun.Task(files.get(place), place, condition));
        }
      }
    }
    List<MeasureRun.Done> done = new ArrayList<>();
    ProgressBar bar = new ProgressBar(tasks.size() * (besideStock ? 2 : 1));
    try (Engine engine = Engine.open(home, understanding, model, settings, Console.err())) {
      done.addAll(hear(new MeasuredSession(engine, understanding, settings), noises, tasks, bar));
    }
    if (besideStock) {
      List<MeasureRun.Task> again = tasks.stream().map(MeasureCommand::byStock).toList();
      List<String> phrases = MeasuredSession.phrases(folders, split, understanding.typed());
      try (Engine engine = Engine.openStock(home, model, phrases)) {
        done.addAll(hear(new MeasuredSession(engine, understanding, settings), noises, again, bar));
      }
    }
    bar.end();
    return print(done, least);
  }

  private int printReviewed() throws IOException {
    ReviewedRecords records = ReviewedRecords.in(data.store());
    records.problems().forEach(Console.err()::println);
    if (records.encrypted() > 0) {
      Console.err().println("left out, since they are encrypted: " + records.encrypted());
    }
    if (records.signed() == 0) {
      Console.err().println("no signed record is kept here");
    }
    if (json) {
      records.table().json().forEach(Console::json);
    } else if (records.signed() > 0) {
      Console.out().print(records.table().text());
    }
    return records.problems().isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }

  private void check() {
    if (reviewed != folders.isEmpty()) {
      throw wrong(
          reviewed
              ? "expected no folder beside --reviewed, found " + folders.get(0)
              : "expected a folder of recordings, or --reviewed");
    }
    if (ratios != null && noise == null) {
      throw wrong("expected --noise beside --snr");
    }
    if (besideStock && offScript) {
      throw wrong("expected --beside-stock or --off-script, found both");
    }
    if (threads != null && threads < 1) {
      throw wrong("expected at least 1 for --threads, found " + threads);
    }
    if (!(pause >= 0 && pause <= 60)) {
      throw wrong("expected 0 to 60 s for --pause, found " + pause);
    }
    for (double ratio : ratios == null ? List.<Double>of() : ratios) {
      if (!(Math.abs(ratio) <= 60)) {
        throw wrong("expected -60 to 60 dB for --snr, found " + ratio);
      }
    }
  }

  private ParameterException wrong(String message) {
    return new ParameterException(spec.commandLine(), message);
  }

  private List<Condition> conditions() {
    List<Condition> all = new ArrayList<>(List.of(Condition.CLEAN));
    if (noise != null) {
      List<Double> wanted = ratios == null ? List.of(15.0, 10.0, 5.0) : ratios;
      wanted.stream().distinct().forEach(ratio -> all.add(new Condition(ratio, false)));
    }
    return all;
  }

  private static MeasureRun.Task byStock(MeasureRun.Task task) {
    return new MeasureRun.Task(
        task.file(), task.place(), new Condition(task.condition().snrDb(), true));
  }

  private List<MeasureRun.Done> hear(
      MeasuredSession subject, Noises noises, List<MeasureRun.Task> tasks, ProgressBar bar)
      throws InterruptedException {
    int cores = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    return new MeasureRun(subject, noises, offScript, pause).run(tasks, cores, bar::step);
  }

  private int print(List<MeasureRun.Done> done, Baseline least) {
    Map<String, List<Score>> groups = new LinkedHashMap<>();
    for (MeasureRun.Done one : done) {
      if (json) {
        Console.out()
            .println(one.score().map(MeasureJson::of).orElseGet(() -> MeasureJson.of(one)));
      }
      one.score()
          .ifPresent(
              score ->
                  groups
                      .computeIfAbsent(
                          score.file().toAbsolutePath().getParent() + score.condition().name(),
                          key -> new ArrayList<>())
                      .add(score));
    }
    List<Figures> rows = groups.values().stream().map(Figures::of).toList();
    if (json) {
      Console.out().println(MeasureJson.summary(rows));
    } else if (!rows.isEmpty()) {
      Console.out().print(offScript ? Tables.offScript(rows) : Tables.scripted(rows));
      done.stream().flatMap(one -> one.score().stream()).forEach(this::printWhatIsWrong);
    }
    return complain(done, least == null ? List.of() : least.problems(rows));
  }

  private void printWhatIsWrong(Score score) {
    String where = score.file().getFileName() + ", " + score.condition().name() + ": ";
    if (offScript) {
      score.heard().stream()
          .filter(TimedUtterance::counts)
          .forEach(
              one ->
                  Console.out()
                      .println(
                          where
                              + "accepted \""
                              + one.text()
                              + "\": "
                              + String.join(
                                  "; ",
                                  one.meant().stream().map(ComparableMeaning::text).toList())));
    } else if (!score.condition().stock()) {
      score.wrong().forEach(key -> Console.out().println(where + "false " + key));
    }
  }

  /** Tells what could not be done, each problem once. */
  private static int complain(List<MeasureRun.Done> done, List<String> worse) {
    List<String> problems =
        done.stream()
            .filter(one -> one.score().isEmpty())
            .map(MeasureRun.Done::problem)
            .distinct()
            .toList();
    problems.forEach(Console.err()::println);
    done.stream()
        .flatMap(one -> one.score().stream())
        .flatMap(
            score ->
                score.notCovered().stream()
                    .map(text -> score.file().getFileName() + ": not understood: " + text))
        .distinct()
        .forEach(Console.err()::println);
    worse.forEach(Console.err()::println);
    return problems.isEmpty() && worse.isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }

  /** Reads a half by its id. */
  static final class SplitConverter implements picocli.CommandLine.ITypeConverter<Split> {
    @Override
    public Split convert(String id) {
      try {
        return Split.ofId(id);
      } catch (IllegalArgumentException e) {
        throw new picocli.CommandLine.TypeConversionException(e.getMessage());
      }
    }
  }
}
