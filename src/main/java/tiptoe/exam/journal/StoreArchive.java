package tiptoe.exam.journal;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.ByteArrayOutputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import tiptoe.files.FolderTree;
import tiptoe.files.OwnerOnly;

/**
 * All records in one file: a ZIP, encrypted in pieces under a key that a passphrase opens, as a
 * record's own lines are. Each piece is bound to its place and to whether it is the last, so that
 * none can be left out, moved or added (the STREAM construction: Hoang, Reyhanitabar, Rogaway and
 * Vizár, CRYPTO 2015).
 */
public final class StoreArchive {
  private static final int LONGEST_HEADER = 4096;
  private static final List<String> BESIDE =
      List.of("heads.log", "trusted-keys", "signing-key.json");
  private static final Pattern NAME =
      Pattern.compile(
          "examinations/(?!\\.)[\\w.-]{1,100}/(audio/)?(?!\\.)[\\w.-]{1,100}"
              + "|heads\\.log|trusted-keys|signing-key\\.json");

  private final Path data;

  private final int iterations;

  /**
   * @param data the folder that holds the records
   */
  public StoreArchive(Path data) {
    this(data, DataKey.ITERATIONS);
  }

  StoreArchive(Path data, int iterations) {
    this.data = data;
    this.iterations = iterations;
  }

  /**
   * What became of the records.
   *
   * @param done ids of those that were written, or put in place
   * @param left what was left as it is, and why
   */
  public record Outcome(List<String> done, List<String> left) {
    public Outcome {
      done = List.copyOf(done);
      left = List.copyOf(left);
    }
  }

  /**
   * Writes all records into a new file, and reads it back before it gets its name. What another
   * process writes to is left out, and told.
   *
   * @throws IOException when there is such a file already, or it cannot be written
   */
  public Outcome write(Path file, List<ExamFolder> exams, char[] passphrase) throws IOException {
    if (Files.exists(file, LinkOption.NOFOLLOW_LINKS)) {
      throw new FileAlreadyExistsException(file.toString(), null, "choose another name");
    }
    Path part = file.resolveSibling(file.getFileName() + ".part");
    Files.deleteIfExists(part);
    List<String> done = new ArrayList<>();
    List<String> left = new ArrayList<>();
    try {
      DataKey key = DataKey.create(passphrase, iterations);
      try (var channel = OwnerOnly.createFile(part)) {
        OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel));
        out.write(key.header());
        out.write('\n');
        try (ZipOutputStream zip = new ZipOutputStream(new SealedPieces.Out(out, key))) {
          for (ExamFolder exam : exams) {
            FolderLock lock;
            try {
              lock = FolderLock.take(exam);
            } catch (RecordProblem e) {
              left.add(exam.name() + ": " + e.getMessage());
              continue;
            }
            try (lock) {
              add(zip, exam);
              done.add(exam.name());
            }
          }
          for (String name : BESIDE) {
            if (Files.isRegularFile(data.resolve(name), LinkOption.NOFOLLOW_LINKS)) {
              add(zip, name, data.resolve(name));
            }
          }
          zip.finish();
          channel.force(true);
        }
      }
      try (Zip zip = open(part, passphrase)) {
        while (zip.getNextEntry() != null) {
          zip.transferTo(OutputStream.nullOutputStream());
        }
        zip.drain();
      }
      Files.move(part, file);
      return new Outcome(done, left);
    } finally {
      Files.deleteIfExists(part);
    }
  }

  private static void add(ZipOutputStream zip, ExamFolder exam) throws IOException {
    try (Stream<Path> paths = Files.walk(exam.path(), 2)) {
      List<Path> files =
          paths
              .filter(path -> Files.isRegularFile(path, LinkOption.NOFOLLOW_LINKS))
              .filter(path -> !path.equals(exam.lock()) && !path.equals(exam.reserve()))
              .sorted()
              .toList();
      for (Path file : files) {
        Path inside = exam.path().relativize(file);
        add(zip, "examinations/" + exam.name() + "/" + inside.toString().replace('\\', '/'), file);
      }
    }
  }

  private static void add(ZipOutputStream zip, String name, Path file) throws IOException {
    zip.putNextEntry(new ZipEntry(name));
    Files.copy(file, zip);
    zip.closeEntry();
  }

  /**
   * Puts the records of an archive in place. All of it is read and checked before anything of it
   * is; a record that is here already stays as it is.
   *
   * @throws IOException when the passphrase is wrong, or the file is not whole
   */
  public Outcome restore(Path file, char[] passphrase) throws IOException {
    OwnerOnly.createFolder(data);
    Path aside = data.resolve(".restoring-" + ProcessHandle.current().pid());
    FolderTree.delete(aside);
    OwnerOnly.createFolder(aside);
    try {
      unpack(file, passphrase, aside);
      return putInPlace(aside);
    } finally {
      FolderTree.delete(aside);
    }
  }

  private static void unpack(Path file, char[] passphrase, Path aside) throws IOException {
    try (Zip zip = open(file, passphrase)) {
      for (ZipEntry entry = zip.getNextEntry(); entry != null; entry = zip.getNextEntry()) {
        if (!NAME.matcher(entry.getName()).matches()) {
          throw new IOException("expected files of records, found " + entry.getName());
        }
        Path to = aside.resolve(entry.getName());
        OwnerOnly.createFolder(to.getParent());
        try (var channel = OwnerOnly.createFile(to)) {
          zip.transferTo(Channels.newOutputStream(channel));
          channel.force(true);
        }
      }
      // The ZIP ends before the file does: what comes behind has to be whole as well.
      zip.drain();
    }
  }

  private Outcome putInPlace(Path aside) throws IOException {
    Path from = aside.resolve("examinations");
    Path to = data.resolve("examinations");
    OwnerOnly.createFolder(to);
    List<String> done = new ArrayList<>();
    List<String> left = new ArrayList<>();
    for (Path exam : children(from)) {
      Path place = to.resolve(exam.getFileName());
      String name = exam.getFileName().toString();
      if (!Files.exists(place, LinkOption.NOFOLLOW_LINKS)) {
        Files.move(exam, place);
        done.add(name);
      } else {
        left.add(name + (alike(exam, place) ? ": is here already" : ": is here, and differs"));
      }
    }
    RecordStore.forceFolder(to);
    heads(aside.resolve("heads.log"), done);
    for (String name : BESIDE) {
      if (Files.exists(aside.resolve(name)) && !Files.exists(data.resolve(name))) {
        Files.move(aside.resolve(name), data.resolve(name));
      }
    }
    return new Outcome(done, left);
  }

  /** What was seen of the records that came back, so that a cut end is told here too. */
  private void heads(Path archived, List<String> ids) throws IOException {
    if (!Files.exists(archived) || !Files.exists(data.resolve("heads.log"))) {
      return;
    }
    HeadLog heads = new HeadLog(data);
    for (String line : Files.readAllLines(archived)) {
      String[] words = line.split(" ");
      if (words.length == 3 && ids.contains(words[0]) && words[1].matches("\\d{1,9}")) {
        heads.note(words[0], Long.parseLong(words[1]), words[2]);
      }
    }
  }

  private static boolean alike(Path one, Path other) throws IOException {
    for (Path file : files(one)) {
      Path twin = other.resolve(one.relativize(file));
      if (!Files.isRegularFile(twin) || Files.mismatch(file, twin) >= 0) {
        return false;
      }
    }
    return true;
  }

  private static List<Path> files(Path folder) throws IOException {
    try (Stream<Path> paths = Files.walk(folder)) {
      return paths.filter(Files::isRegularFile).toList();
    }
  }

  private static List<Path> children(Path folder) throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    try (Stream<Path> paths = Files.list(folder)) {
      return new ArrayList<>(new TreeSet<>(paths.toList()));
    }
  }

  private static Zip open(Path file, char[] passphrase) throws IOException {
    InputStream in = new BufferedInputStream(Files.newInputStream(file));
    try {
      ByteArrayOutputStream header = new ByteArrayOutputStream();
      for (int next = in.read(); next != '\n'; next = in.read()) {
        if (next < 0 || header.size() > LONGEST_HEADER) {
          throw new IOException("expected an archive of records, found something else in " + file);
        }
        header.write(next);
      }
      if (!DataKey.isHeader(header.toByteArray())) {
        throw new IOException("expected an archive of records, found something else in " + file);
      }
      DataKey key = DataKey.unlock(header.toByteArray(), passphrase);
      return new Zip(new SealedPieces.In(in, key));
    } catch (IOException | RuntimeException e) {
      in.close();
      throw e;
    }
  }

  /** Reads the entries, and what is behind them. */
  private static final class Zip extends ZipInputStream {
    private final InputStream pieces;

    Zip(InputStream pieces) {
      super(pieces);
      this.pieces = pieces;
    }

    void drain() throws IOException {
      pieces.transferTo(OutputStream.nullOutputStream());
    }

    @Override
    public ZipEntry getNextEntry() throws IOException {
      try {
        return super.getNextEntry();
      } catch (EOFException e) {
        throw new IOException("the archive is not whole: it ends too early", e);
      }
    }
  }
}
