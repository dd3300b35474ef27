package tiptoe.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Quantity;
import tiptoe.language.Meaning;
import tiptoe.language.tagger.NaturalSentences;
import tiptoe.measure.Condition;
import tiptoe.measure.Figures;
import tiptoe.measure.MeasureJson;
import tiptoe.measure.MeasureRun;
import tiptoe.measure.MeasuredPipeline;
import tiptoe.measure.Noises;
import tiptoe.measure.Recordings;
import tiptoe.measure.Score;
import tiptoe.measure.Split;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Side;
import tiptoe.protocol.Step;
import tiptoe.settings.Settings;

/**
 * Prints what the product makes of sounds that {@link HearAll} has heard, without hearing them
 * again: seconds instead of hours, so that decisions can be compared.
 *
 * <pre>
 * HeardFigures KEPT SETS plain|notes FOLDER:SPLIT:NOISE-SPLIT:q,10[:NOISE]…
 * </pre>
 *
 * <p>A folder beside whose recordings {@code name.key} lies ({@code step/side=value; fact=value}…,
 * or {@code none}) is counted statement by statement; one whose recordings have no text is talk.
 */
final class HeardFigures {
  private final KeptHearing.Reading reading;
  private final Path sets;
  private final boolean notes;

  private HeardFigures(KeptHearing.Reading reading, Path sets, boolean notes) {
    this.reading = reading;
    this.sets = sets;
    this.notes = notes;
  }

  /** Prints all. */
  public static void main(String[] args) throws IOException, InterruptedException {
    Understanding understanding = Understanding.load(Home.locate());
    understanding.getReady(System.err);
    List<Path> kept;
    try (Stream<Path> all = Files.list(Path.of(args[0]))) {
      kept = all.filter(file -> file.toString().endsWith(".jsonl")).sorted().toList();
    }
    MeasuredSession session = new MeasuredSession(null, understanding, Settings.DEFAULT);
    HeardFigures figures =
        new HeardFigures(
            new KeptHearing.Reading(understanding, session, Settings.DEFAULT, kept),
            Path.of(args[1]),
            args[2].equals("notes"));
    for (int i = 3; i < args.length; i++) {
      figures.print(args[i].split(":"));
    }
    System.exit(0);
  }

  private void print(String[] spec) throws IOException, InterruptedException {
    Path noise = sets.resolve(spec.length > 4 ? spec[4] : "cry");
    Noises noises = Noises.in(noise, Split.ofId(spec[2]), 1);
    List<Path> files = Recordings.in(sets.resolve(spec[0]), Split.ofId(spec[1]));
    boolean natural = Files.exists(beside(files.get(0), ".key"));
    boolean talk = spec[0].matches(".*(chat|talk|off-script)");
    for (String db : spec[3].split(",")) {
      Condition condition = new Condition(db.equals("q") ? null : Double.valueOf(db), false);
      List<MeasureRun.Task> tasks = new ArrayList<>();
      for (int place = 0; place < files.size(); place++) {
        tasks.add(new MeasureRun.Task(files.get(place), place, condition));
      }
      Statements statements = new Statements();
      List<Score> scores =
          new MeasureRun(natural ? statements : reading, noises, talk || natural, 0)
              .run(tasks, 1, () -> {}).stream()
                  .peek(done -> System.out.print(done.problem()))
                  .flatMap(done -> done.score().stream())
                  .toList();
      String name = String.join(" ", spec[0], spec[1], condition.name());
      Figures all = Figures.of(scores);
      System.out.println(
          name
              + ": "
              + (natural ? statements.count(files) : talk ? talk(all) : phrases(all, scores)));
      if (notes && !natural) {
        scores.forEach(score -> note(score, talk));
      }
    }
  }

  private static String phrases(Figures all, List<Score> scores) {
    long wrong = scores.stream().filter(HeardFigures::isWrong).count();
    return "%d lines, word for word %.1f %%, as meant %.1f %%, missed or unsure %.1f %%; something wrong in %d clips (%.1f %%), %d false answers"
        .formatted(
            all.lines(),
            100 * all.ofLines(all.exact()),
            100 * all.ofLines(all.understood()),
            100 * all.ofLines(all.missed()),
            wrong,
            100.0 * wrong / scores.size(),
            all.falseAnswers());
  }

  private static boolean isWrong(Score score) {
    return !score.wrong().isEmpty() || MeasureJson.of(score).path("wrong").asInt() > 0;
  }

  private static String talk(Figures all) {
    return "%d recordings, %.1f min: %d recorded or carried out, %d unsure (%.0f an hour)"
        .formatted(
            all.files(), all.hours() * 60, all.accepted(), all.unsure(), all.perHour(all.unsure()));
  }

  private static void note(Score score, boolean talk) {
    boolean counted =
        score.heard().stream()
            .anyMatch(one -> one.outcome() == Outcome.ACCEPTED || one.outcome() == Outcome.COMMAND);
    int missed = MeasureJson.of(score).path("missed").asInt();
    if (talk ? counted : isWrong(score) || missed > 0) {
      System.out.println("  " + MeasureJson.of(score));
    }
  }

  private static Path beside(Path recording, String ending) {
    String name = recording.getFileName().toString();
    return recording.resolveSibling(name.replaceFirst("\\.wav$", ending));
  }

  /** Counts statements one by one. */
  private final class Statements implements MeasuredPipeline {
    private final List<ExamRecord> records = new ArrayList<>();
    private final List<Changes> heard = new ArrayList<>();

    @Override
    public ExamRecord hear(SampleSource sound, Consumer<Changes> told) throws IOException {
      List<Changes> all = new ArrayList<>();
      ExamRecord record = reading.hear(sound, all::add);
      all.forEach(told);
      records.add(record);
      heard.add(
          all.stream().reduce(Changes::then).orElse(new Changes(List.of(), List.of(), record)));
      return record;
    }

    @Override
    public void warmUp(SampleSource sound) {
      // Nothing is heard anew, and each sound is counted once.
    }

    @Override
    public ExamRecord read(List<String> lines, Consumer<Changes> taken) {
      return reading.read(lines, taken);
    }

    @Override
    public List<String> words(String line) {
      return reading.words(line);
    }

    String count(List<Path> files) throws IOException {
      int all = 0;
      int right = 0;
      int wrong = 0;
      int offered = 0;
      for (int i = 0; i < records.size(); i++) {
        Set<String> expected = keys(Files.readString(beside(files.get(i), ".key")).strip());
        Set<String> recorded =
            Stream.concat(
                    records.get(i).answers().stream()
                        .map(one -> key(one.step(), one.side(), one.value(), one.quantity())),
                    records.get(i).baby().facts().entrySet().stream()
                        .map(one -> one.getKey() + "=" + one.getValue()))
                .collect(Collectors.toCollection(TreeSet::new));
        Set<String> seen = offered(heard.get(i));
        all += expected.size();
        int before = right;
        for (String one : expected) {
          boolean found = recorded.stream().anyMatch(key -> same(key, one));
          right += found ? 1 : 0;
          offered += !found && seen.stream().anyMatch(key -> isIn(key, Set.of(one))) ? 1 : 0;
        }
        List<String> bad = recorded.stream().filter(one -> !isIn(one, expected)).toList();
        wrong += bad.size();
        if (notes && (!bad.isEmpty() || right - before < expected.size())) {
          System.out.println(
              "  %s expected %s wrong %s heard %s"
                  .formatted(
                      files.get(i).getFileName(),
                      expected,
                      bad,
                      heard
                          .get(i)
                          .of(Event.UtteranceHeard.class)
                          .map(one -> one.heard().outcome().id() + ": " + one.heard().text())
                          .toList()));
        }
      }
      return "%d sentences, %d statements: recorded %.1f %% (%d right, %d wrong), offered %.1f %%"
          .formatted(records.size(), all, 100.0 * right / all, right, wrong, 100.0 * offered / all);
    }

    private static Set<String> offered(Changes changes) {
      Set<String> seen = new TreeSet<>();
      changes
          .of(Event.UtteranceHeard.class)
          .flatMap(one -> one.candidates().stream())
          .forEach(one -> seen.add(key(one.statement())));
      changes
          .of(Event.QuestionAsked.class)
          .forEach(
              one -> {
                if (one.question().about() != null) {
                  seen.add(key(one.question().about()));
                } else if (one.fact() != null) {
                  seen.add(one.fact() + "=" + one.value());
                }
              });
      return seen;
    }
  }

  /** The statements of a line of a key. */
  static Set<String> keys(String line) {
    return line.equals("none") ? Set.of() : new TreeSet<>(List.of(line.split("\\s*;\\s*")));
  }

  static String key(Finding said) {
    return key(said.step(), said.side(), said.value(), said.quantity());
  }

  /** What a statement or a fact says; of another meaning nothing. */
  static Optional<String> key(Meaning meaning) {
    return meaning instanceof Meaning.States states
        ? Optional.of(key(states.statement()))
        : meaning instanceof Meaning.Fact fact
            ? Optional.of(fact.id() + "=" + fact.value())
            : Optional.empty();
  }

  private static String key(String step, Side side, String value, Quantity quantity) {
    String where = side == null ? step : step + "/" + side.id();
    return where + "=" + (value == null ? quantity.text() : value);
  }

  static boolean isIn(String found, Set<String> expected) {
    return expected.stream()
        .anyMatch(one -> same(found, one) || same(found, one.replaceFirst("/(left|right)=", "=")));
  }

  // Older keys write "num:" before a number; of what has no side, a side is not compared.
  private static boolean same(String found, String expected) {
    String[] one = found.split("=", 2);
    String[] other = expected.split("=", 2);
    return placed(one[0]).equals(placed(other[0]))
        && NaturalSentences.same(one[1], other[1].replaceFirst("^num:", ""));
  }

  private static String placed(String key) {
    String step = key.replaceFirst("/.*", "");
    return Protocol.standard().find(step).filter(Step::sided).isPresent() ? key : step;
  }
}
