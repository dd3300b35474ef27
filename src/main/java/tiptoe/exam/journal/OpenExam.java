package tiptoe.exam.journal;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tiptoe.audio.Pcm;
import tiptoe.audio.Segment;
import tiptoe.audio.SegmentStore;
import tiptoe.audio.SoundSeal;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Examination;
import tiptoe.exam.NotRecorded;
import tiptoe.exam.QuestionText;
import tiptoe.exam.Review;
import tiptoe.exam.Signer;
import tiptoe.files.OwnerOnly;
import tiptoe.files.Sha256;
import tiptoe.protocol.Protocol;

/** An examination that this process, and no other, writes to. */
public final class OpenExam implements AutoCloseable {
  private final ExamFolder folder;
  private final Examination examination;
  private final Journal journal;
  private final FolderLock lock;
  private final SoundSeal seal;
  private final HeadLog heads;
  private final List<String> besides;

  OpenExam(
      ExamFolder folder,
      Examination examination,
      Journal journal,
      FolderLock lock,
      SoundSeal seal,
      HeadLog heads,
      List<String> besides) {
    this.folder = folder;
    this.examination = examination;
    this.journal = journal;
    this.lock = lock;
    this.seal = seal;
    this.heads = heads;
    this.besides = besides;
  }

  static OpenExam of(
      ExamFolder folder,
      Protocol protocol,
      Clock clock,
      QuestionText words,
      JournalReading reading,
      FolderLock lock,
      HeadLog heads,
      List<String> besides,
      Ending ending)
      throws IOException {
    FileChannel channel = openJournal(folder);
    Path aside = reading.torn().length == 0 ? null : setAside(folder, reading, channel);
    Journal journal =
        new Journal(
            folder,
            channel,
            reading.whole(),
            reading.chain(),
            reading.codec(),
            reading.heads().isEmpty() ? "" : reading.heads().get(reading.heads().size() - 1));
    Examination examination =
        Examination.of(ExamRecord.fold(protocol, reading.entries()), clock, journal, words);
    if (aside != null) {
      String file = aside.getFileName().toString();
      examination.note(new Event.TailSetAside(reading.torn().length, file));
    }
    SoundSeal seal = SealedSound.of(reading.codec());
    OpenExam open = new OpenExam(folder, examination, journal, lock, seal, heads, besides);
    if (ending == Ending.BROKEN_OFF && examination.record().signatures().isEmpty()) {
      // Noted, so that nobody changes it from now on.
      for (Segment segment : AudioCheck.unfinished(folder, examination.record())) {
        open.note(segment, true);
      }
    }
    return open;
  }

  private static FileChannel openJournal(ExamFolder folder) throws RecordProblem {
    try {
      return FileChannel.open(folder.journal(), StandardOpenOption.WRITE);
    } catch (IOException e) {
      throw RecordProblem.of("write to " + folder.journal(), e);
    }
  }

  /** Copies the unfinished line to a file of its own, and only then cuts it off. */
  private static Path setAside(ExamFolder folder, JournalReading reading, FileChannel journal)
      throws IOException {
    Path file = folder.aside();
    OwnerOnly.write(file, reading.torn());
    RecordStore.forceFolder(folder.path());
    journal.truncate(reading.whole());
    journal.force(true);
    return file;
  }

  public Examination examination() {
    return examination;
  }

  public ExamFolder folder() {
    return folder;
  }

  /**
   * Where sound goes, encrypted as the record is; behind what there is. Each segment is noted with
   * its hash once it is complete.
   */
  public SegmentStore openSound() throws IOException {
    return SegmentStore.open(folder.audio(), seal, this::noteKept);
  }

  private void noteKept(Segment segment) throws IOException {
    try {
      note(segment, false);
    } catch (NotRecorded e) {
      throw new RecordProblem(e.getMessage(), e);
    }
  }

  private void note(Segment segment, boolean found) throws IOException {
    String hash = Sha256.hex(Sha256.of(segment.file()));
    examination.note(
        new Event.SegmentKept(
            AudioCheck.name(segment), segment.length(), hash, found ? true : null));
  }

  /** Whether the journal that is written to is still where it was, and not removed or moved. */
  public boolean isInPlace() {
    return journal.isInPlace();
  }

  /**
   * Sees that it is still where it is kept.
   *
   * @throws IOException when its folder was removed, and with it what was recorded
   */
  public void requireInPlace() throws IOException {
    if (!isInPlace()) {
      throw new IOException(
          "the examination stopped: "
              + whereItWas()
              + "; what was recorded went with it, and nothing was recorded since");
    }
  }

  /** What to tell where it is no longer there. */
  public String whereItWas() {
    return "the folder of the record was removed or moved away: " + folder.path();
  }

  /** Whether it holds anything but what was stated when it was opened. */
  public boolean hasBegun() throws IOException {
    return !audioHashes().isEmpty()
        || examination.record().entries().stream()
            .map(Entry::event)
            .anyMatch(
                event ->
                    !(event instanceof Event.ExaminationOpened)
                        && !(event instanceof Event.ContextStated)
                        && !(event instanceof Event.KeepAudioChosen));
  }

  /** The sound between two seconds of the examination; empty if none is kept of that time. */
  public Optional<Pcm> sound(double from, double to) throws IOException {
    return SegmentStore.read(folder.audio(), from, to, seal);
  }

  /** Name to SHA-256 of every segment of sound, to sign. */
  public Map<String, String> audioHashes() throws IOException {
    return AudioCheck.hashes(folder);
  }

  /**
   * What whoever signs must know: what is wrong with the sound that is kept, and what this
   * installation has seen of the record before and is not there. Empty when nothing is.
   */
  public List<String> problems() throws IOException {
    List<String> problems = new ArrayList<>(besides);
    problems.addAll(AudioCheck.problems(folder, examination.record(), seal, Ending.CLOSED));
    return problems;
  }

  /** Those of the problems that no crash and no full disk explains. */
  public List<String> alterations() throws IOException {
    List<String> problems = new ArrayList<>(besides);
    problems.addAll(AudioCheck.changes(folder, examination.record(), seal, Ending.CLOSED));
    return problems;
  }

  /**
   * Seals the record with the sound there is, and then does with the sound what was chosen.
   *
   * @param name who answers for it
   * @param role in which capacity
   * @param signer has the key, or is {@link Signer#NAME_ONLY}
   */
  public void sign(String name, String role, Signer signer, KeepAudio keep) throws IOException {
    examination.review(name).sign(role, audioHashes(), signer);
    noteHead();
    keep.afterSigning(this);
  }

  /**
   * Ticks off something of the plan; in a signed record by an addendum with a signature of its own.
   *
   * @param what it in words
   * @param note what came of it; may be null
   */
  public void tick(
      String item, String what, boolean done, String note, String name, String role, Signer signer)
      throws IOException {
    Review review = examination.review(name);
    boolean signed = examination.record().signed();
    if (signed) {
      review.startAddendum((done ? "done: " : "not done: ") + what);
    }
    review.tick(item, what, done, note);
    if (signed) {
      sign(name, role, signer, KeepAudio.ALWAYS);
    }
  }

  /** Notes outside the record how far it has come, so that a cut end is told. */
  private void noteHead() {
    try {
      heads.note(examination.record().opened().id(), journal.seq(), journal.head());
    } catch (IOException e) {
      // The record itself is kept; without the note only a cut end would not be told.
    }
  }

  public void removeAudio(String reason) throws IOException {
    List<String> files = List.copyOf(audioHashes().keySet());
    if (!files.isEmpty()) {
      examination.note(new Event.AudioRemoved(files, reason));
      SegmentStore.erase(folder.audio());
    }
  }

  /** Lets go of it, so that another process can open it. */
  @Override
  public void close() throws IOException {
    noteHead();
    try (lock) {
      journal.close();
    }
  }
}
