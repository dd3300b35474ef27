package tiptoe.exam.journal;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
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
 * @param torn bytes of an unfinished line at its end, 0 if none
 * @param taken whether another process writes to it now
 * @param seal opens its sound; null when it is not encrypted
 */
public record StoredExam(
    ExamFolder folder,
    ExamRecord record,
    List<String> breaks,
    int torn,
    boolean taken,
    SoundSeal seal) {
  public StoredExam {
    breaks = List.copyOf(breaks);
  }

  /** The sound between two seconds of the examination; empty if none is kept of that time. */
  public Optional<Pcm> sound(double from, double to) throws IOException {
    return SegmentStore.read(folder.audio(), from, to, seal);
  }

  /**
   * Everything that is not as it was written: breaks of the chain, an unfinished end, sound that
   * was signed and has changed or that utterances need and is not there. Empty when all is well.
   */
  public List<String> problems() throws IOException {
    List<String> problems = new ArrayList<>(breaks);
    if (torn > 0) {
      problems.add("the last line, of " + torn + " bytes, is not finished");
    }
    problems.addAll(AudioCheck.problems(folder, record));
    return problems;
  }
}
