package tiptoe.session;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import tiptoe.audio.Pcm;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.measure.Condition;
import tiptoe.measure.MeasureRun;
import tiptoe.measure.Noises;
import tiptoe.measure.Recordings;
import tiptoe.measure.Split;
import tiptoe.measure.TaskSound;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;

/** OUT SETTINGS SHARD SHARDS THREADS NOISE SPEC...; a spec is folder:split:noise-split:db,db. */
final class HearAll {
  private HearAll() {}

  /** Hears all. */
  public static void main(String[] args) throws Exception {
    Home home = Home.locate();
    Understanding understanding = Understanding.load(home);
    Settings settings = Settings.DEFAULT.with(Setting.WEIGHTS, args[1]);
    int shard = Integer.parseInt(args[2]);
    int shards = Integer.parseInt(args[3]);
    int at = 0;
    understanding.getReady(System.err);
    long start = System.nanoTime();
    try (PrintWriter out = new PrintWriter(args[0], StandardCharsets.UTF_8);
        Engine engine = Engine.open(home, understanding, null, settings, System.err)) {
      System.err.printf("loaded after %.1f s%n", (System.nanoTime() - start) / 1e9);
      for (int arg = 6; arg < args.length; arg++) {
        String[] spec = args[arg].split(":");
        Split noiseSplit = Split.ofId(spec[2]);
        Noises noises = Noises.in(Path.of(spec.length > 4 ? spec[4] : args[5]), noiseSplit, 1);
        List<Path> files = Recordings.in(Path.of(spec[0]), Split.ofId(spec[1]));
        List<MeasureRun.Task> tasks = new ArrayList<>();
        for (String db : spec[3].split(",")) {
          Double snr = db.equals("q") ? null : Double.valueOf(db);
          for (int place = 0; place < files.size(); place++) {
            if (at++ % shards == shard) {
              tasks.add(new MeasureRun.Task(files.get(place), place, new Condition(snr, false)));
            }
          }
        }
        ExecutorService cores = Executors.newFixedThreadPool(Integer.parseInt(args[4]));
        for (MeasureRun.Task task : tasks) {
          cores.submit(
              () -> {
                try {
                  long from = System.nanoTime();
                  Pcm sound = TaskSound.of(task, noises);
                  List<KeptHearing.Kept> kept = KeptHearing.hear(engine, understanding, sound);
                  ObjectNode line = KeptHearing.line(sound, kept);
                  line.put("took", (System.nanoTime() - from) / 1e9);
                  line.put("set", spec[0] + (spec.length > 4 ? "+" + spec[4] : ""));
                  line.put("split", spec[1]).put("file", task.file().getFileName().toString());
                  line.put("condition", task.condition().name());
                  Path text = Path.of(task.file().toString().replaceFirst("\\.wav$", ".txt"));
                  if (Files.exists(text)) {
                    ArrayNode said = line.putArray("said");
                    for (String row : Files.readAllLines(text)) {
                      ObjectNode one = said.addObject();
                      meaning(one, understanding, understanding.typed().words(row));
                    }
                  }
                  for (int i = 0; i < kept.size(); i++) {
                    ObjectNode one = (ObjectNode) line.path("heard").get(i);
                    ways(one, understanding, kept.get(i).utterance());
                    kept.get(i)
                        .utterance()
                        .freely()
                        .ifPresent(f -> ways((ObjectNode) one.get("free"), understanding, f));
                  }
                  synchronized (out) {
                    out.println(line);
                    out.flush();
                  }
                } catch (IOException | RuntimeException e) {
                  System.err.println("not heard: " + e);
                }
              });
        }
        cores.shutdown();
        cores.awaitTermination(1, TimeUnit.HOURS);
        System.err.printf("%s after %.1f s%n", args[arg], (System.nanoTime() - start) / 1e9);
      }
    }
    System.exit(0);
  }

  private static void ways(ObjectNode into, Understanding understanding, Hypothesis heard) {
    ArrayNode ways = into.putArray("ways");
    meaning(
        ways.addObject(),
        understanding,
        heard.phraseWords().stream().map(tiptoe.speech.Word::text).toList());
    heard
        .rivals()
        .forEach(
            rival ->
                meaning(
                    ways.addObject(),
                    understanding,
                    rival.text().isEmpty() ? List.of() : List.of(rival.text().split(" "))));
  }

  private static void meaning(ObjectNode into, Understanding understanding, List<String> words) {
    Interpretation meaning =
        understanding.interpreter().interpret(words, Dialogue.START, Source.GRAMMAR);
    into.put("text", String.join(" ", words));
    ArrayNode all = into.putArray("means");
    meaning.meanings().forEach(one -> all.add(text(one)));
    into.put("uncovered", meaning.uncovered().size()).put("withheld", meaning.withheld());
    if (!meaning.certainties().isEmpty()) {
      ArrayNode sure = into.putArray("sure");
      meaning.certain().meanings().forEach(one -> sure.add(text(one)));
    }
  }

  private static String text(Meaning meaning) {
    return meaning instanceof Meaning.States said
        ? (said.correction() ? "C " : "S ") + said.statement().withSource(Source.GRAMMAR)
        : meaning.toString();
  }
}
