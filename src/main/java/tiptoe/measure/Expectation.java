package tiptoe.measure;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import tiptoe.clinical.AnswersFile;
import tiptoe.exam.ExamRecord;
import tiptoe.files.BoundedFile;
import tiptoe.finding.Finding;
import tiptoe.protocol.Protocol;

/**
 * What should come out of a recording.
 *
 * @param script what is said; empty where only the answers are known
 * @param words the words of each line, as the grammars spell them
 * @param meant what each line does
 * @param answers what should stand at the end
 * @param notCovered words that the grammars do not hold, with the line they are in, for people
 */
record Expectation(
    Optional<Script> script,
    List<List<String>> words,
    List<List<ComparableMeaning>> meant,
    Set<Finding> answers,
    List<String> notCovered) {

  /**
   * Reads {@code name.txt} and {@code name.json} beside {@code name.wav}; the answers of the latter
   * count where both are there.
   */
  static Expectation beside(Path recording, MeasuredPipeline subject) throws IOException {
    Path text = withEnding(recording, ".txt");
    Path json = withEnding(recording, ".json");
    boolean said = Files.isRegularFile(text);
    boolean answered = Files.isRegularFile(json);
    if (!said && !answered) {
      throw new IOException(
          "expected %s or %s beside %s, found neither"
              .formatted(text.getFileName(), json.getFileName(), recording.getFileName()));
    }
    Expectation byWords =
        said
            ? of(Script.parse(BoundedFile.TEXT.lines(text)), subject)
            : new Expectation(Optional.empty(), List.of(), List.of(), Set.of(), List.of());
    return answered ? byWords.withAnswers(answers(json)) : byWords;
  }

  static Expectation of(Script script, MeasuredPipeline subject) {
    List<List<ComparableMeaning>> meant = new ArrayList<>();
    List<String> notCovered = new ArrayList<>();
    ExamRecord record =
        subject.read(
            script.lines(),
            changes -> {
              changes
                  .of(tiptoe.exam.Event.UtteranceHeard.class)
                  .filter(heard -> !heard.uncovered().isEmpty())
                  .forEach(
                      heard ->
                          notCovered.add(
                              String.join(" ", heard.uncovered())
                                  + " in: "
                                  + heard.heard().text()));
              meant.add(ComparableMeaning.of(changes));
            });
    return new Expectation(
        Optional.of(script),
        script.lines().stream().map(subject::words).toList(),
        meant,
        keys(record),
        notCovered);
  }

  private Expectation withAnswers(Set<Finding> others) {
    return new Expectation(script, words, meant, others, notCovered);
  }

  static Set<Finding> keys(ExamRecord record) {
    return record.answers().stream()
        .map(answer -> answer.finding().bare())
        .collect(Collectors.toSet());
  }

  private static Set<Finding> answers(Path json) throws IOException {
    AnswersFile file =
        AnswersFile.parse(BoundedFile.ANSWERS.text(json), Protocol.standard(), ZoneOffset.UTC);
    if (!file.problems().isEmpty()) {
      throw new IOException(json.getFileName() + ": " + String.join("; ", file.problems()));
    }
    return file.answers().stream()
        .map(answer -> answer.finding().bare())
        .collect(Collectors.toSet());
  }

  private static Path withEnding(Path recording, String ending) {
    String name = recording.getFileName().toString();
    return recording.resolveSibling(name.substring(0, name.lastIndexOf('.')) + ending);
  }
}
