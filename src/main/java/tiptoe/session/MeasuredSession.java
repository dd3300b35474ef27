package tiptoe.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Changes;
import tiptoe.exam.ExamRecord;
import tiptoe.files.BoundedFile;
import tiptoe.language.TypedText;
import tiptoe.measure.MeasuredPipeline;
import tiptoe.measure.Recordings;
import tiptoe.measure.Script;
import tiptoe.measure.Split;
import tiptoe.settings.Settings;

/** The stages as an examination wires them, to be measured. */
public final class MeasuredSession implements MeasuredPipeline {
  private final Engine engine;
  private final Understanding understanding;
  private final Settings settings;

  public MeasuredSession(Engine engine, Understanding understanding, Settings settings) {
    this.engine = engine;
    this.understanding = understanding;
    this.settings = settings;
  }

  @Override
  public ExamRecord hear(SampleSource sound, Consumer<Changes> heard) throws IOException {
    ExamSession session = Sessions.inMemory(understanding, settings);
    new Dictation(engine, session).listen(sound, 0, heard);
    return session.record();
  }

  @Override
  public ExamRecord read(List<String> lines, Consumer<Changes> taken) {
    ExamSession session = Sessions.inMemory(understanding, settings);
    int at = 0;
    for (String line : lines) {
      List<String> words = words(line);
      taken.accept(session.type(String.join(" ", words), words, at++));
    }
    return session.record();
  }

  @Override
  public List<String> words(String line) {
    return understanding.typed().words(line);
  }

  /** All lines of the scripts in folders, in the words of the grammars. */
  public static List<String> phrases(List<Path> folders, Split split, TypedText typed)
      throws IOException {
    List<String> phrases = new ArrayList<>();
    for (Path folder : folders) {
      for (Path file : Recordings.in(folder, split)) {
        Path text =
            file.resolveSibling(file.getFileName().toString().replaceFirst("\\.[^.]*$", ".txt"));
        if (Files.isRegularFile(text)) {
          Script.parse(BoundedFile.TEXT.lines(text)).lines().stream()
              .map(line -> String.join(" ", typed.words(line)))
              .filter(phrase -> !phrases.contains(phrase))
              .forEach(phrases::add);
        }
      }
    }
    return phrases;
  }
}
