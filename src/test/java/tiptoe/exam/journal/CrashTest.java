package tiptoe.exam.journal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.BufferedReader;
import java.io.File;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;
import tiptoe.MemoryDisk;
import tiptoe.TestExtent;
import tiptoe.audio.SegmentStore;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/** Real processes that are killed, run out of disk, or may not write. */
@Tag("process")
class CrashTest {
  private static final int RATE = 16_000;

  private static Path archive;
  private static String classPath;

  @TempDir(factory = MemoryDisk.class)
  Path data;

  private RecordStore store() {
    return store(data);
  }

  private static RecordStore store(Path data) {
    return new RecordStore(data, Protocol.standard(), Clock.systemUTC(), QuestionWording::of);
  }

  /**
   * Kills a process many times while it records, at moments spread over opening and writing, and
   * goes on with the same examination each time.
   */
  @Test
  void noStatementThatWasShownIsLostHoweverOftenItIsKilled() throws Exception {
    kill(TestExtent.of(3, 40), data);
  }

  /** The same on a real disk, where a process can also be killed while it waits for it. */
  @Test
  void noStatementIsLostWhileTheDiskIsWaitedFor(@TempDir Path disk) throws Exception {
    kill(TestExtent.of(2, 15), disk);
  }

  private void kill(int kills, Path disk) throws Exception {
    Random random = new Random(1);
    String exam = "new";
    int shown = 0;
    long sound = 0;
    int torn = 0;
    for (int kill = 0; kill < kills; kill++) {
      Run run = new Run(writer(disk, exam, 100_000));
      run.killAfter(random.nextInt(12), random.nextInt(4_000_000));
      exam = run.exam == null ? exam : run.exam;
      shown = Math.max(shown, run.last("shown"));
      sound = Math.max(sound, run.last("sound"));
      if (!exam.equals("new")) {
        StoredExam stored = store(disk).read(store(disk).find(exam), null);
        assertEquals(List.of(), stored.breaks(), "after kill " + kill);
        assertTrue(
            stored.record().statements().size() >= shown,
            "shown " + shown + ", kept " + stored.record().statements().size());
        assertTrue(sound - kept(stored.folder()) <= RATE, "more than a second of sound was lost");
        torn += stored.torn() > 0 ? 1 : 0;
      }
    }
    assertTrue(shown > kills, "only " + shown + " statements were recorded");
    System.out.println(
        kills + " kills: " + shown + " statements shown, none lost; " + torn + " torn lines");
  }

  private static long kept(ExamFolder folder) throws IOException {
    return SegmentStore.segments(folder.audio()).stream()
        .mapToLong(segment -> segment.end())
        .max()
        .orElse(0);
  }

  @Test
  void aSecondProcessIsRefusedUntilTheFirstIsGone() throws Exception {
    Run first = new Run(writer("new", 100_000));
    first.readUntil("shown 3");
    Run second = new Run(writer(first.exam, 1));
    second.readToEnd();
    assertEquals(
        "problem examination " + first.exam + " is open in another window", second.lines.get(0));
    assertTrue(store().read(store().find(first.exam), null).taken());
    first.kill();
    Run third = new Run(writer(first.exam, 1));
    third.readToEnd();
    assertEquals("done", third.lines.get(third.lines.size() - 1));
  }

  @Test
  void aFullDiskIsSaidToBeFullAndWhatWasShownIsKept() throws Exception {
    assumeTrue(mountsWork(), "needs to be allowed to mount a small file system");
    Run run = new Run(inSmallDisk("size=256k", writer("new", 100_000), "cp -r", data));
    run.readToEnd();
    assertTrue(run.lines.contains("problem not recorded: No space left on device"), "" + run.lines);
    StoredExam stored = store().read(store().find(run.exam), null);
    assertEquals(List.of(), stored.breaks());
    assertEquals(0, stored.torn());
    assertEquals(run.last("shown"), stored.record().statements().size());
    assertTrue(run.last("shown") > 10);
  }

  @Test
  void aFolderThatCannotBeWrittenToIsSaidToBeSo() throws Exception {
    assumeTrue(mountsWork(), "needs to be allowed to mount a small file system");
    Run run = new Run(inSmallDisk("ro", writer("new", 1), "true", data));
    run.readToEnd();
    assertEquals(
        "problem expected to write to "
            + data.resolve("disk/examinations")
            + ", found Read-only"
            + " file system",
        run.lines.get(0));
  }

  private static boolean mountsWork() throws Exception {
    List<String> command =
        List.of("unshare", "-m", "sh", "-c", "mount -t tmpfs -o size=64k tmpfs /mnt");
    try {
      Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
      return process.waitFor(10, TimeUnit.SECONDS) && process.exitValue() == 0;
    } catch (IOException e) {
      return false;
    }
  }

  /** Runs the writer on a small disk that only it can see, and copies what it left. */
  private List<String> inSmallDisk(String options, List<String> writer, String copy, Path to)
      throws IOException {
    Path disk = Files.createDirectory(data.resolve("disk"));
    List<String> command = new ArrayList<>(writer);
    command.set(command.indexOf(data.toString()), disk.toString());
    String script =
        "mount -t tmpfs -o "
            + options
            + " tmpfs '"
            + disk
            + "' && \"$@\"; "
            + copy
            + " '"
            + disk
            + "/examinations' '"
            + to
            + "'";
    List<String> all = new ArrayList<>(List.of("unshare", "-m", "sh", "-c", script, "sh"));
    all.addAll(command);
    return all;
  }

  private List<String> writer(String exam, int statements) {
    return writer(data, exam, statements);
  }

  private List<String> writer(Path to, String exam, int statements) {
    List<String> command = ChildJava.command();
    command.addAll(
        List.of(
            "-XX:SharedArchiveFile=" + archive,
            "-Xshare:auto",
            "-Xlog:disable",
            "-Xmx128m",
            "-cp",
            classPath,
            KilledWriter.class.getName(),
            to.toString(),
            exam,
            String.valueOf(statements)));
    return command;
  }

  /** Dumps the loaded classes, with which a process starts in half the time. */
  @BeforeAll
  static void dumpClasses(@TempDir Path folder) throws Exception {
    archive = folder.resolve("classes.jsa");
    classPath = withJars(folder);
    Path data = folder.resolve("data");
    List<String> command = new ArrayList<>(new CrashTest().writer(data, "new", 50));
    command.replaceAll(
        argument -> argument.replace("-XX:SharedArchiveFile=", "-XX:ArchiveClassesAtExit="));
    new Run(command).readToEnd();
  }

  /** The class path with its folders packed, since classes of folders are not dumped. */
  private static String withJars(Path to) throws IOException {
    List<String> places = new ArrayList<>();
    // Surefire's own property: the other then names a jar that only lists the folders.
    String all =
        System.getProperty("surefire.test.class.path", System.getProperty("java.class.path"));
    for (String place : all.split(File.pathSeparator)) {
      Path folder = Path.of(place);
      places.add(
          Files.isDirectory(folder)
              ? jar(folder, to.resolve("classes-" + places.size() + ".jar"))
              : place);
    }
    return String.join(File.pathSeparator, places);
  }

  private static String jar(Path folder, Path file) throws IOException {
    try (JarOutputStream out = new JarOutputStream(Files.newOutputStream(file));
        Stream<Path> all = Files.walk(folder)) {
      for (Path path : (Iterable<Path>) all.filter(Files::isRegularFile)::iterator) {
        String name = folder.relativize(path).toString().replace(File.separatorChar, '/');
        out.putNextEntry(new JarEntry(name));
        Files.copy(path, out);
      }
    }
    return file.toString();
  }

  /** A process and what it has printed. */
  private static final class Run {
    private final Process process;
    private final BufferedReader out;
    private final List<String> lines = new ArrayList<>();
    private String exam;

    Run(List<String> command) throws IOException {
      process = new ProcessBuilder(command).redirectError(ProcessBuilder.Redirect.INHERIT).start();
      out =
          new BufferedReader(
              new InputStreamReader(process.getInputStream(), StandardCharsets.UTF_8));
    }

    /** Kills it some nanoseconds after it has shown so many statements. */
    void killAfter(int statements, int nanos) throws Exception {
      for (int shown = 0; shown < statements; ) {
        String line = read();
        if (line == null) {
          break;
        }
        shown += line.startsWith("shown") ? 1 : 0;
      }
      long until = System.nanoTime() + nanos;
      while (System.nanoTime() < until) {
        Thread.onSpinWait();
      }
      kill();
    }

    void kill() throws Exception {
      process.destroyForcibly();
      readToEnd();
      assertTrue(process.waitFor(10, TimeUnit.SECONDS));
    }

    void readUntil(String wanted) throws IOException {
      String line = read();
      while (line != null && !line.equals(wanted)) {
        line = read();
      }
    }

    void readToEnd() {
      try {
        while (read() != null) {
          // until the process is gone
        }
      } catch (IOException e) {
        // what a killed process leaves unread can be closed at any time
      }
    }

    private String read() throws IOException {
      String line = out.readLine();
      if (line != null) {
        lines.add(line);
        exam = line.startsWith("open ") ? line.substring(5) : exam;
      }
      return line;
    }

    int last(String word) {
      return lines.stream()
          .filter(line -> line.matches(word + " \\d+"))
          .mapToInt(line -> Integer.parseInt(line.substring(word.length() + 1)))
          .max()
          .orElse(0);
    }
  }
}
