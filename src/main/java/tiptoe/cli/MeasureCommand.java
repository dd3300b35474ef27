package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.measure.Baseline;
import tiptoe.measure.Condition;
import tiptoe.measure.KeptRecords;
import tiptoe.measure.MeasureReport;
import tiptoe.measure.MeasureRun;
import tiptoe.measure.Noises;
import tiptoe.measure.Split;
import tiptoe.screen.ProgressBar;
import tiptoe.session.Engine;
import tiptoe.session.Home;
import tiptoe.session.MeasuredSession;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;

/** Tells how well recordings are heard. */
@Command(
    name = "measure",
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
    List<MeasureRun.Task> tasks =
        MeasureRun.tasks(folders, split, Condition.all(noise != null, ratios));
    List<MeasureRun.Done> done = new ArrayList<>();
    ProgressBar bar = new ProgressBar(tasks.size() * (besideStock ? 2 : 1), Console.err());
    try (Engine engine = Engine.open(home, understanding, model, settings, Console.err())) {
      done.addAll(hear(new MeasuredSession(engine, understanding, settings), noises, tasks, bar));
    }
    if (besideStock) {
      List<MeasureRun.Task> again = tasks.stream().map(MeasureRun.Task::byStock).toList();
      List<String> phrases = MeasuredSession.phrases(folders, split, understanding.typed());
      try (Engine engine = Engine.openStock(home, model, phrases)) {
        done.addAll(hear(new MeasuredSession(engine, understanding, settings), noises, again, bar));
      }
    }
    bar.end();
    return print(new MeasureReport(done, offScript), least);
  }

  private int printReviewed() throws IOException {
    KeptRecords records = KeptRecords.in(data.store());
    records.leftOut().forEach(Console.err()::println);
    if (records.signed() == 0) {
      Console.err().println("no signed record is kept here");
    }
    if (json) {
      records.agreement().json().forEach(Console::json);
    } else if (records.signed() > 0) {
      Console.out().print(records.agreement().text());
    }
    return records.problems().isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }

  private void check() {
    if (reviewed != folders.isEmpty()) {
      throw new WrongUse(
          reviewed
              ? "expected no folder beside --reviewed, found " + folders.get(0)
              : "expected a folder of recordings, or --reviewed");
    }
    WrongUse.unless(ratios == null || noise != null, "expected --noise beside --snr");
    WrongUse.unless(
        !besideStock || !offScript, "expected --beside-stock or --off-script, found both");
    WrongUse.unless(
        threads == null || threads >= 1, "expected at least 1 for --threads, found " + threads);
    WrongUse.unless(pause >= 0 && pause <= 60, "expected 0 to 60 s for --pause, found " + pause);
    for (double ratio : ratios == null ? List.<Double>of() : ratios) {
      WrongUse.unless(Math.abs(ratio) <= 60, "expected -60 to 60 dB for --snr, found " + ratio);
    }
  }

  private List<MeasureRun.Done> hear(
      MeasuredSession subject, Noises noises, List<MeasureRun.Task> tasks, ProgressBar bar)
      throws InterruptedException {
    int cores = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
    return new MeasureRun(subject, noises, offScript, pause).run(tasks, cores, bar::step);
  }

  private int print(MeasureReport report, Baseline least) {
    if (json) {
      report.json().forEach(Console.out()::println);
    } else {
      Console.out().print(report.tables());
      report.wrong().forEach(Console.out()::println);
    }
    List<String> worse = least == null ? List.of() : report.worse(least);
    report.problems().forEach(Console.err()::println);
    report.notCovered().forEach(Console.err()::println);
    worse.forEach(Console.err()::println);
    return report.problems().isEmpty() && worse.isEmpty() ? 0 : Tiptoe.COULD_NOT;
  }
}
