package tiptoe.session;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import tiptoe.audio.Pcm;
import tiptoe.measure.Condition;
import tiptoe.measure.MeasureRun;
import tiptoe.measure.Noises;
import tiptoe.measure.Recordings;
import tiptoe.measure.Split;
import tiptoe.measure.TaskSound;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

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
                  List<KeptHearing.Kept> kept =
                      KeptHearing.hear(engine.recogniser(), understanding, sound);
                  ObjectNode line = KeptHearing.line(sound, kept);
                  line.put("took", (System.nanoTime() - from) / 1e9);
                  line.put("set", spec[0] + (spec.length > 4 ? "+" + spec[4] : ""));
                  line.put("split", spec[1]).put("file", task.file().getFileName().toString());
                  line.put("condition", task.condition().name());
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
}
