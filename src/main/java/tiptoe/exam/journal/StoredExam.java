package tiptoe.exam.journal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import tiptoe.audio.Pcm;
import tiptoe.audio.SegmentStore;
import tiptoe.audio.SoundSeal;
import tiptoe.exam.ExamRecord;

/**
 * An examination as it is on the disk, to read.
 *
 * @param record what its events fold to, also those behind a break
 * @param breaks where the journal is not what was written, for people; empty when it is whole
 * @param besides what else speaks against it: what this installation has seen of it before
 * @param torn bytes of an unfinished line at its end, 0 if none
 * @param ending how it was left
 * @param seal opens its sound; null when it is not encrypted
 * @param trusted fingerprint to owner of the keys that are trusted here
 */
public record StoredExam(
    ExamFolder folder,
    ExamRecord record,
    List<String> breaks,
    List<String> besides,
    int torn,
    Ending ending,
    SoundSeal seal,
    Map<String, String> trusted) {
  public StoredExam {
    breaks = List.copyOf(breaks);
    besides = List.copyOf(besides);
    trusted = Map.copyOf(trusted);
  }

  /** Whether another process writes to it now. */
  public boolean taken() {
    return ending == Ending.OPEN;
  }

  /** The sound between two seconds of the examination; empty if none is kept of that time. */
  public Optional<Pcm> sound(double from, double to) throws IOException {
    return SegmentStore.read(folder.audio(), from, to, seal);
  }

  /** Whether it is what was written and signed; reads all of its sound. */
  public Integrity integrity() throws IOException {
    return Integrity.of(this);
  }

  /**
   * Whether it is what was written and signed.
   *
   * @throws RecordProblem when it is not
   */
  public Integrity requireAsWritten() throws IOException {
    Integrity integrity = integrity();
    if (integrity.isAltered()) {
      throw new RecordProblem("examination " + folder.name() + " is " + integrity.banner(record));
    }
    return integrity;
  }

  String tornTail() {
    return "the last line, of " + torn + " bytes, is not finished";
  }

  /**
   * Everything that is not as it should be, also what a crash or a full disk explains: an
   * unfinished end, and sound that utterances need and that was never stored. Empty when all is
   * well.
   */
  public List<String> problems() throws IOException {
    List<String> problems = new ArrayList<>(integrity().problems());
    if (torn > 0 && !problems.contains(tornTail())) {
      problems.add(tornTail());
    }
    AudioCheck.problems(folder, record, seal, ending).stream()
        .filter(problem -> !problems.contains(problem))
        .forEach(problems::add);
    return problems;
  }
}
