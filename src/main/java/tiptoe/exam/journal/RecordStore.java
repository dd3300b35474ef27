package tiptoe.exam.journal;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.security.SecureRandom;
import java.time.Clock;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;
import java.util.stream.Stream;
import tiptoe.audio.SoundSeal;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.QuestionText;
import tiptoe.files.FolderTree;
import tiptoe.files.OwnerOnly;
import tiptoe.files.Sha256;
import tiptoe.protocol.LocalProtocol;
import tiptoe.protocol.Protocol;

/** All examinations of a user, each in a folder of its own. */
public final class RecordStore {
  /** Names the newest examination. */
  public static final String LAST = "last";

  private static final int MOST_NAMED = 5;
  private static final int STAMP_DIGITS = 12;
  private static final String REMOVING = ".removing-";
  private static final DateTimeFormatter WHEN =
      DateTimeFormatter.ofPattern("yyyy-MM-dd-HHmm", Locale.ROOT);
  private static final String LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

  private final Path folder;
  private final Protocol protocol;
  private final Clock clock;
  private final QuestionText words;
  private final HeadLog heads;
  private final TrustedKeys trusted;
  private final int iterations;
  private final SecureRandom random = new SecureRandom();

  /**
   * @param data the user's data folder
   * @param protocol of new examinations; another goes by what it was opened with
   * @param words puts the questions that are asked into words
   */
  public RecordStore(Path data, Protocol protocol, Clock clock, QuestionText words) {
    this(data, protocol, clock, words, DataKey.ITERATIONS);
  }

  /**
   * @param iterations how much work a passphrase is made to be, in new examinations
   */
  RecordStore(Path data, Protocol protocol, Clock clock, QuestionText words, int iterations) {
    this.iterations = iterations;
    folder = data.resolve("examinations");
    this.protocol = protocol;
    this.clock = clock;
    this.words = words;
    heads = new HeadLog(data);
    trusted = new TrustedKeys(data);
  }

  /**
   * Opens a new examination.
   *
   * @param label the user's own words for it; may be null
   * @param tool version of the tool
   * @param author who examines; may be null
   * @param passphrase what to encrypt it with; null to leave it readable
   */
  public OpenExam create(String label, String tool, String author, char[] passphrase)
      throws IOException {
    try {
      ExamFolder made = new ExamFolder(folder.resolve(newName()));
      OwnerOnly.createFolder(made.path());
      FolderLock lock = FolderLock.take(made);
      FileChannel channel = OwnerOnly.createFile(made.journal());
      DataKey key = passphrase == null ? null : DataKey.create(passphrase, iterations);
      LineCodec codec = key == null ? LineCodec.PLAIN : new EncryptedLines(key);
      long length = key == null ? 0 : writeHeader(channel, key);
      forceFolder(made.path());
      forceFolder(folder);
      Journal journal = new Journal(made, channel, length, Chain.start(), codec, "");
      Event.ExaminationOpened opening =
          new Event.ExaminationOpened(
              made.name(),
              label,
              stamp(protocol),
              tool,
              author,
              protocol.local().map(LocalProtocol::text).orElse(null));
      Examination examination = Examination.open(protocol, clock, journal, words, opening);
      SoundSeal seal = SealedSound.of(codec);
      return new OpenExam(made, examination, journal, lock, seal, heads, List.of());
    } catch (NotRecorded e) {
      throw new RecordProblem(e.getMessage(), e);
    } catch (IOException e) {
      throw RecordProblem.of("write to " + folder, e);
    }
  }

  /** Tells one version of the protocol from another: a hash over all that it says. */
  private static String stamp(Protocol protocol) {
    byte[] all = protocol.regions().toString().getBytes(StandardCharsets.UTF_8);
    return Sha256.hexOf(all).substring(0, STAMP_DIGITS);
  }

  private static long writeHeader(FileChannel channel, DataKey key) throws IOException {
    byte[] header = key.header();
    ByteBuffer line = ByteBuffer.allocate(header.length + 1).put(header).put((byte) '\n').flip();
    while (line.hasRemaining()) {
      channel.write(line);
    }
    channel.force(true);
    return header.length + 1L;
  }

  private String newName() {
    StringBuilder name = new StringBuilder(WHEN.format(ZonedDateTime.now(clock))).append('-');
    for (int i = 0; i < 4; i++) {
      name.append(LETTERS.charAt(random.nextInt(LETTERS.length())));
    }
    return name.toString();
  }

  /**
   * Opens an examination to write to it: to go on with it or to review it. An unfinished last line
   * is moved to a file beside the journal, which the record notes.
   *
   * @param passphrase null when it is not encrypted
   * @throws RecordProblem when another process writes to it, its chain is broken, it is not there
   *     or cannot be written to, or the passphrase is missing or wrong
   */
  public OpenExam open(ExamFolder exam, char[] passphrase) throws IOException {
    requireThere(exam);
    FolderLock lock = lock(exam);
    try {
      JournalReading reading = JournalReader.read(exam, passphrase);
      requireWhole(exam, reading);
      return OpenExam.of(
          exam,
          protocol(reading),
          clock,
          words,
          reading,
          lock,
          heads,
          besides(exam, reading),
          ending(exam, reading, false));
    } catch (IOException | RuntimeException e) {
      lock.close();
      throw e;
    }
  }

  private static FolderLock lock(ExamFolder exam) throws IOException {
    try {
      return FolderLock.take(exam);
    } catch (IOException e) {
      throw RecordProblem.of("write to " + exam.path(), e);
    }
  }

  private static void requireThere(ExamFolder exam) throws RecordProblem {
    if (!exam.exists()) {
      throw new RecordProblem("expected an examination in " + exam.path() + ", found none");
    }
  }

  /** What this installation has seen of a record before and does not find in it now. */
  private List<String> besides(ExamFolder exam, JournalReading reading) throws IOException {
    List<String> besides = new ArrayList<>();
    if (reading.entries().isEmpty()) {
      besides.add("the journal holds nothing");
    }
    String id = id(exam, reading);
    if (!exam.name().equals(id) && heads.knows(exam.name())) {
      besides.add("the journal is that of another examination, " + id);
    }
    besides.addAll(heads.problems(id, reading.heads()));
    return besides;
  }

  private static String id(ExamFolder exam, JournalReading reading) {
    return opening(reading).map(Event.ExaminationOpened::id).orElse(exam.name());
  }

  /** That by which it was examined, whatever the ward says now. */
  private static Protocol protocol(JournalReading reading) {
    return Protocol.recorded(opening(reading).map(Event.ExaminationOpened::local).orElse(null));
  }

  private static Optional<Event.ExaminationOpened> opening(JournalReading reading) {
    return reading.entries().stream()
        .map(Entry::event)
        .filter(Event.ExaminationOpened.class::isInstance)
        .map(Event.ExaminationOpened.class::cast)
        .findFirst();
  }

  private Ending ending(ExamFolder exam, JournalReading reading, boolean taken) throws IOException {
    int last = reading.heads().size();
    boolean closed =
        last > 0 && heads.isEnd(id(exam, reading), last, reading.heads().get(last - 1));
    return taken ? Ending.OPEN : closed ? Ending.CLOSED : Ending.BROKEN_OFF;
  }

  private void requireWhole(ExamFolder exam, JournalReading reading) throws IOException {
    if (!reading.breaks().isEmpty()) {
      throw new RecordProblem(
          "examination "
              + exam.name()
              + " can only be read: its journal is broken at "
              + reading.breaks().get(0));
    }
    if (reading.entries().isEmpty()) {
      throw new RecordProblem("examination " + exam.name() + " holds nothing");
    }
    ExamRecord record = ExamRecord.fold(protocol(reading), reading.entries());
    List<String> problems = new ArrayList<>(Integrity.journalProblems(record));
    if (!record.signatures().isEmpty()) {
      // Of one that is not signed, whoever signs it is told before.
      problems.addAll(besides(exam, reading));
      problems.addAll(
          AudioCheck.changes(exam, record, SealedSound.of(reading.codec()), Ending.CLOSED));
    }
    if (!problems.isEmpty()) {
      throw new RecordProblem(
          "examination " + exam.name() + " can only be read: " + problems.get(0));
    }
  }

  /**
   * The record as it is now, read again whenever its journal has grown.
   *
   * @param passphrase null when it is not encrypted
   */
  public Supplier<ExamRecord> following(StoredExam first, char[] passphrase) throws IOException {
    ExamFolder exam = first.folder();
    long[] seen = {Files.size(exam.journal())};
    ExamRecord[] record = {first.record()};
    return () -> {
      try {
        long size = Files.size(exam.journal());
        if (size != seen[0]) {
          seen[0] = size;
          record[0] = read(exam, passphrase).record();
        }
        return record[0];
      } catch (IOException e) {
        throw new UncheckedIOException(e.getMessage(), e);
      }
    };
  }

  /**
   * Reads an examination, even while another process writes to it and where its journal is broken.
   *
   * @param passphrase null when it is not encrypted
   */
  public StoredExam read(ExamFolder exam, char[] passphrase) throws IOException {
    requireThere(exam);
    boolean taken = FolderLock.isTaken(exam);
    JournalReading reading = JournalReader.read(exam, passphrase);
    return new StoredExam(
        exam,
        ExamRecord.fold(protocol(reading), reading.entries()),
        reading.breaks(),
        besides(exam, reading),
        taken ? 0 : reading.torn().length,
        ending(exam, reading, taken),
        SealedSound.of(reading.codec()),
        trusted.owners());
  }

  /**
   * The folder of an examination: named by its id, by its path, by what no other id begins with, or
   * as {@code last}, the newest.
   */
  public ExamFolder find(String name) throws IOException {
    for (Path place : List.of(folder.resolve(name), Path.of(name).toAbsolutePath())) {
      ExamFolder exam = new ExamFolder(place.normalize());
      if (exam.exists()) {
        return exam;
      }
    }
    List<ExamFolder> all = list();
    List<ExamFolder> meant =
        all.stream()
            .filter(
                exam ->
                    name.equals(LAST)
                        ? isOfTheLastMinute(exam, all)
                        : !name.isBlank() && exam.name().startsWith(name))
            .toList();
    if (meant.size() > 1) {
      List<String> some = meant.stream().limit(MOST_NAMED).map(ExamFolder::name).toList();
      throw new RecordProblem(
          "expected one examination, found %s called %s: %s%s"
              .formatted(
                  meant.size(),
                  name,
                  String.join(", ", some),
                  meant.size() > MOST_NAMED ? " and more" : ""));
    }
    return meant.stream()
        .findFirst()
        .orElseThrow(() -> new RecordProblem("expected an examination, found none called " + name));
  }

  /** Which of two that begin in the same minute is the newer, their names do not tell. */
  private static boolean isOfTheLastMinute(ExamFolder exam, List<ExamFolder> newestFirst) {
    String newest = newestFirst.get(0).name();
    int minute = Math.min(newest.length(), "yyyy-MM-dd-HHmm".length());
    return exam.name().startsWith(newest.substring(0, minute));
  }

  /** All examinations, the newest first. What a crash left of a removal is removed. */
  public List<ExamFolder> list() throws IOException {
    if (!Files.isDirectory(folder)) {
      return List.of();
    }
    List<ExamFolder> exams = new ArrayList<>();
    try (Stream<Path> paths = Files.list(folder)) {
      for (Path path : (Iterable<Path>) paths::iterator) {
        if (path.getFileName().toString().startsWith(REMOVING)) {
          FolderTree.delete(path);
        } else if (new ExamFolder(path).exists()) {
          exams.add(new ExamFolder(path));
        }
      }
    }
    exams.sort(Comparator.comparing(ExamFolder::name).reversed());
    return exams;
  }

  public boolean isEncrypted(ExamFolder exam) throws IOException {
    requireThere(exam);
    return JournalReader.isEncrypted(exam);
  }

  /**
   * Removes an examination, its journal and its audio.
   *
   * @throws RecordProblem when some process has it open, it is not kept here, or it cannot be
   *     removed
   */
  public void remove(ExamFolder exam) throws IOException {
    requireThere(exam);
    if (!folder.toAbsolutePath().normalize().equals(exam.path().toAbsolutePath().getParent())) {
      throw new RecordProblem("expected an examination in " + folder + ", found " + exam.path());
    }
    try {
      // Let go of at once: some systems move no folder that holds an open file.
      lock(exam).close();
      Path away = exam.path().resolveSibling(REMOVING + exam.name());
      Files.move(exam.path(), away);
      FolderTree.delete(away);
      forceFolder(away.getParent());
    } catch (IOException e) {
      throw RecordProblem.of("remove " + exam.path(), e);
    }
  }

  /** Without this, a power cut could lose the name of a new file. */
  static void forceFolder(Path path) {
    try (FileChannel channel = FileChannel.open(path, StandardOpenOption.READ)) {
      channel.force(true);
    } catch (IOException e) {
      // Windows opens no folders; its file systems log names themselves.
    }
  }
}
