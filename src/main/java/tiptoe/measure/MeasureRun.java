package tiptoe.measure;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorCompletionService;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Pcm;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;

/**
 * Runs recordings through what is measured, on several threads, and scores what comes out.
 *
 * @param noises null where no condition asks for noise
 * @param offScript whether nothing that is said belongs to an examination
 * @param pause length of the silence put before and behind each recording, in s
 */
public record MeasureRun(MeasuredPipeline subject, Noises noises, boolean offScript, double pause) {
  /**
   * One recording to be heard in one condition.
   *
   * @param place its place among the recordings of its folder, from 0
   */
  public record Task(Path file, int place, Condition condition) {
    /** The same heard by the model's own run-time grammar. */
    public Task byStock() {
      return new Task(file, place, new Condition(condition.snrDb(), true));
    }
  }

  /** Every recording of the folders in every condition. */
  public static List<Task> tasks(List<Path> folders, Split split, List<Condition> conditions)
      throws IOException {
    List<Task> tasks = new ArrayList<>();
    for (Path folder : folders) {
      List<Path> files = Recordings.in(folder, split);
      for (Condition condition : conditions) {
        for (int place = 0; place < files.size(); place++) {
          tasks.add(new Task(files.get(place), place, condition));
        }
      }
    }
    return tasks;
  }

  /**
   * What came of a task.
   *
   * @param problem why there is no score, for people; empty where there is one
   */
  public record Done(Task task, Optional<Score> score, String problem) {}

  /**
   * Scores all tasks, in their order whatever the threads.
   *
   * @param step run after each task, by the caller's thread
   */
  public List<Done> run(List<Task> tasks, int threads, Runnable step) throws InterruptedException {
    int atOnce = Math.max(1, Math.min(threads, tasks.size()));
    tasks.stream().findFirst().ifPresent(this::warmUp);
    ExecutorService cores = Executors.newFixedThreadPool(atOnce);
    try {
      ExecutorCompletionService<Done> service = new ExecutorCompletionService<>(cores);
      List<Future<Done>> futures = new ArrayList<>();
      tasks.forEach(task -> futures.add(service.submit(() -> attempt(task, atOnce))));
      for (int i = 0; i < tasks.size(); i++) {
        service.take();
        step.run();
      }
      List<Done> done = new ArrayList<>();
      for (Future<Done> future : futures) {
        done.add(future.get());
      }
      return done;
    } catch (ExecutionException e) {
      throw new IllegalStateException(e.getCause().getMessage(), e.getCause());
    } finally {
      cores.shutdownNow();
    }
  }

  /** Before the clock starts: what loads when first needed, loads once in hours of listening. */
  private void warmUp(Task task) {
    try {
      subject.warmUp(new PcmSource(sound(task)));
    } catch (IOException e) {
      // The recording is tried again, and then told of.
    }
  }

  private Done attempt(Task task, int atOnce) {
    try {
      return new Done(task, Optional.of(score(task, atOnce)), "");
    } catch (IOException e) {
      return new Done(task, Optional.empty(), e.getMessage());
    }
  }

  // So many are heard at the same time, and each is taken to cost as much.
  private Score score(Task task, int atOnce) throws IOException {
    Optional<Expectation> expected =
        offScript ? Optional.empty() : Optional.of(Expectation.beside(task.file(), subject));
    Pcm sound = sound(task);
    List<TimedUtterance> heard = new ArrayList<>();
    long start = processorTime();
    PcmSource source = new PcmSource(sound);
    ExamRecord record = subject.hear(source, changes -> heard.addAll(timed(changes, source)));
    double busy = (processorTime() - start) / 1e9 / atOnce;
    boolean scripted = expected.flatMap(Expectation::script).isPresent();
    return new Score(
        task.file(),
        task.condition(),
        task.condition().snrDb() == null ? null : noises.file(task.place()),
        sound.seconds(),
        busy,
        heard,
        scripted ? words(expected.get(), heard) : List.of(),
        scripted ? meaning(expected.get(), heard) : List.of(),
        expected.map(Expectation::answers).orElse(java.util.Set.of()),
        Expectation.keys(record),
        expected.map(Expectation::notCovered).orElse(List.of()));
  }

  /**
   * Processor time of the whole process, in ns, since the second hearing has threads of its own.
   * What the machine does besides must not count, so not by the clock.
   */
  private static long processorTime() {
    return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime();
  }

  private Pcm sound(Task task) throws IOException {
    Pcm speech = AudioFile.read(task.file());
    if (pause > 0) {
      speech = Pcm.join(Pcm.silence(pause), speech, Pcm.silence(pause));
    }
    Double snr = task.condition().snrDb();
    String name = task.file().getFileName().toString();
    return snr == null ? speech : noises.mix(speech, name, task.place(), snr);
  }

  private static List<TimedUtterance> timed(Changes changes, PcmSource source) {
    return changes
        .of(Event.UtteranceHeard.class)
        .map(Event.UtteranceHeard::heard)
        .map(
            heard ->
                new TimedUtterance(
                    heard.start(),
                    heard.lastWordEnd(),
                    heard.text(),
                    heard.outcome(),
                    heard.reason() == null ? "" : heard.reason(),
                    source.seconds(),
                    source.ended(),
                    ComparableMeaning.of(changes)))
        .toList();
  }

  private static List<Alignment.Outcome> words(Expectation expected, List<TimedUtterance> heard) {
    List<String> words =
        heard.stream()
            .filter(one -> !one.text().isEmpty())
            .flatMap(one -> List.of(one.text().split(" ")).stream())
            .toList();
    return Alignment.judge(
        expected.words(), expected.script().orElseThrow().chatterBehind(), words);
  }

  private static List<Alignment.Outcome> meaning(Expectation expected, List<TimedUtterance> heard) {
    List<ComparableMeaning> meant = heard.stream().flatMap(one -> one.meant().stream()).toList();
    return Alignment.judge(
        expected.meant(), expected.script().orElseThrow().chatterBehind(), meant);
  }
}
