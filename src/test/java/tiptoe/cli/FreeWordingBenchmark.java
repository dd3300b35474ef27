package tiptoe.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;
import tiptoe.audio.AudioFile;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.Finding;
import tiptoe.language.Meaning;
import tiptoe.language.tagger.NaturalSentences;
import tiptoe.session.ExamSession;
import tiptoe.session.Hearing;
import tiptoe.session.Sessions;
import tiptoe.settings.Settings;
import tiptoe.speech.Hypothesis;

/**
 * Tells what becomes of spoken natural sentences, with phrases alone and with free wordings beside
 * them, in one run. The recordings are made by {@code natural/speak.py}.
 */
public final class FreeWordingBenchmark {
  /** Statements of one way of hearing. */
  private static final class Tally {
    private int recorded;
    private int recordedWrong;
    private int unsure;
    private int unsureWrong;
    private int nothing;
    private final List<String> wrong = new ArrayList<>();

    @Override
    public String toString() {
      return "recorded %d right, %d wrong; unsure %d right, %d wrong; %d of %d missed"
          .formatted(
              recorded, recordedWrong, unsure, unsureWrong, nothing, recorded + unsure + nothing);
    }
  }

  private final Hearing hearing;
  private final Tally phrases = new Tally();
  private final Tally free = new Tally();

  private FreeWordingBenchmark(Hearing hearing) {
    this.hearing = hearing;
  }

  /**
   * @param args folders of recordings; {@code notes} also lists what was recorded wrongly
   */
  public static void main(String[] args) throws IOException {
    Hearing hearing = Hearing.loaded();
    hearing.understanding().getReady(System.err);
    for (String folder : args) {
      if (!folder.equals("notes")) {
        FreeWordingBenchmark benchmark = new FreeWordingBenchmark(hearing);
        for (Path file : recordings(Path.of(folder))) {
          benchmark.hear(file);
        }
        System.out.println(Path.of(folder).getFileName());
        System.out.println("  phrases        " + benchmark.phrases);
        System.out.println("  free wordings  " + benchmark.free);
        if (List.of(args).contains("notes")) {
          benchmark.free.wrong.forEach(System.out::println);
        }
      }
    }
  }

  private static List<Path> recordings(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    }
  }

  private void hear(Path file) throws IOException {
    String row = Files.readString(Path.of(file.toString().replaceFirst("wav$", "txt"))).strip();
    Map<String, List<String>> expected = NaturalSentences.expected(row.split("=>")[1].strip());
    ExamSession strict = Sessions.inMemory(hearing.understanding(), Settings.DEFAULT);
    ExamSession wide = Sessions.inMemory(hearing.understanding(), Settings.DEFAULT);
    for (Hypothesis heard : hearing.utterances(AudioFile.read(file))) {
      strict.hear(
          new Hypothesis(
              heard.start(),
              heard.end(),
              heard.words(),
              heard.support(),
              heard.rivals(),
              Optional.empty(),
              heard.leftOver()),
          0);
      wide.hear(heard, 0);
    }
    count(strict.record(), expected, phrases, row);
    count(wide.record(), expected, free, row);
  }

  private static void count(
      ExamRecord record, Map<String, List<String>> expected, Tally tally, String row) {
    Set<String> wanted = new TreeSet<>();
    expected.forEach((key, values) -> values.forEach(value -> wanted.add(key + " " + value)));
    Set<String> recorded = new TreeSet<>();
    record.answers().forEach(answer -> add(recorded, answer.finding(), wanted));
    Set<String> unsure = new TreeSet<>();
    record.unsure().stream()
        .flatMap(one -> one.candidates().stream())
        .map(Meaning.States::statement)
        .forEach(statement -> add(unsure, statement, wanted));
    unsure.removeAll(recorded);
    for (String one : wanted) {
      if (recorded.contains(one)) {
        tally.recorded++;
      } else if (unsure.contains(one)) {
        tally.unsure++;
      } else {
        tally.nothing++;
      }
    }
    tally.unsureWrong += (int) unsure.stream().filter(one -> !wanted.contains(one)).count();
    recorded.removeAll(wanted);
    tally.recordedWrong += recorded.size();
    recorded.forEach(one -> tally.wrong.add(one + " in: " + row));
  }

  // Numbers are put as the table has them where they are the same up to rounding.
  private static void add(Set<String> into, Finding statement, Set<String> wanted) {
    String key = NaturalSentences.key(statement);
    String value = NaturalSentences.value(statement);
    into.add(
        wanted.stream()
            .filter(one -> one.startsWith(key + " "))
            .filter(one -> NaturalSentences.same(value, one.substring(key.length() + 1)))
            .findFirst()
            .orElse(key + " " + value));
  }
}
