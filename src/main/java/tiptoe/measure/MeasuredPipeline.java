package tiptoe.measure;

import java.io.IOException;
import java.util.List;
import java.util.function.Consumer;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.ExamRecord;

/** What is measured: the stages from sound to record, wired together. For use by many threads. */
public interface MeasuredPipeline {
  /**
   * Hears an examination of its own.
   *
   * @param heard told what each utterance changed, at once
   * @return the record at the end
   */
  ExamRecord hear(SampleSource sound, Consumer<Changes> heard) throws IOException;

  /** Hears a sound that nobody counts, so that what loads when first needed is loaded. */
  default void warmUp(SampleSource sound) throws IOException {
    hear(sound, changes -> {});
  }

  /**
   * Takes in an examination of its own as if its words had been heard without fault.
   *
   * @param lines one utterance each
   * @param taken told what each line changed, once a line
   * @return the record at the end
   */
  ExamRecord read(List<String> lines, Consumer<Changes> taken);

  /** The words of a line as the grammars spell them. */
  List<String> words(String line);
}
