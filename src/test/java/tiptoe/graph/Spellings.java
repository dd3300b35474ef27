package tiptoe.graph;

import java.io.PrintWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Writes what teaching the acoustic model from texts needs of this program: {@code contexts.tsv}, a
 * line for each phone after each other (left phone, phone, number of the transition tuple from 0),
 * and {@code words.tsv}, a word and its pronunciations as the model's phone numbers. Words without
 * a pronunciation are left out.
 */
final class Spellings {
  private Spellings() {}

  /** TEXTS OUT: a file of texts, one a line, and the folder to write to. */
  public static void main(String[] args) throws Exception {
    AcousticModel model = StockModel.read();
    Path out = Files.createDirectories(Path.of(args[1]));
    try (PrintWriter contexts =
        new PrintWriter(out.resolve("contexts.tsv").toFile(), StandardCharsets.UTF_8)) {
      for (int left = 0; left <= Phone.LAST; left++) {
        for (int phone = 1; phone <= Phone.LAST; phone++) {
          int forward = model.contexts().forward(left, phone);
          if (forward != 0) {
            contexts.printf("%d\t%d\t%d%n", left, phone, forward / 2 - 1);
          }
        }
      }
    }
    Pronunciations pronunciations =
        Pronunciations.read(Path.of("grammars", "pronunciations.txt"), model.lexicon());
    TreeSet<String> words = new TreeSet<>();
    for (String line : Files.readAllLines(Path.of(args[0]))) {
      words.addAll(List.of(line.replace(",", " ").strip().split("\\s+")));
    }
    try (PrintWriter spelled =
        new PrintWriter(out.resolve("words.tsv").toFile(), StandardCharsets.UTF_8)) {
      for (String word : words) {
        String ways =
            pronunciations.of(word).stream()
                .filter(model::canSay)
                .map(Spellings::numbers)
                .distinct()
                .collect(Collectors.joining("\t"));
        if (!ways.isEmpty()) {
          spelled.println(word + "\t" + ways);
        }
      }
    }
  }

  private static String numbers(Pronunciation pronunciation) {
    return Arrays.stream(pronunciation.ids())
        .mapToObj(String::valueOf)
        .collect(Collectors.joining(" "));
  }
}
