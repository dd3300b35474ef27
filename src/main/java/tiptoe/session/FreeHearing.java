package tiptoe.session;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Set;
import java.util.function.Supplier;
import tiptoe.graph.AcousticModel;
import tiptoe.graph.ModelFolder;
import tiptoe.graph.Pronunciations;
import tiptoe.speech.Recogniser;
import tiptoe.speech.RemarkRepair;
import tiptoe.speech.SpeechModel;

/** Hears free speech by the model's own vocabulary, and mends the clinical words it lacks. */
public final class FreeHearing implements AutoCloseable {
  private final ModelFolder stock;
  private final Supplier<Set<String>> clinicalWords;
  private final Path pronunciations;
  private SpeechModel model;
  private RemarkRepair repair;

  /**
   * @param pronunciations how the clinical words are said
   */
  FreeHearing(ModelFolder stock, Supplier<Set<String>> clinicalWords, Path pronunciations) {
    this.stock = stock;
    this.clinicalWords = clinicalWords;
    this.pronunciations = pronunciations;
  }

  Recogniser recogniser() throws IOException {
    if (model == null) {
      model = SpeechModel.open(stock);
    }
    return model.recogniser();
  }

  RemarkRepair.Repaired repaired(String text) throws IOException {
    if (repair == null) {
      AcousticModel acoustic = AcousticModel.read(stock);
      repair =
          new RemarkRepair(
              clinicalWords.get(),
              Pronunciations.read(pronunciations, acoustic.lexicon()),
              acoustic.lexicon());
    }
    return repair.repair(text);
  }

  @Override
  public void close() {
    if (model != null) {
      model.close();
      model = null;
    }
  }
}
