package tiptoe.cli;

import java.util.Comparator;
import java.util.Optional;
import java.util.stream.Stream;
import org.apache.commons.text.similarity.JaroWinklerSimilarity;
import picocli.CommandLine;
import picocli.CommandLine.Model.CommandSpec;

/** Finds the option or command that may have been meant. */
final class Misspelt {
  /** From here on two words look alike; "form" and "from" come to 0.93. */
  private static final double ALIKE = 0.75;

  private Misspelt() {}

  /** What was meant by a word that a command does not take, where something is near enough. */
  static Optional<String> meant(CommandLine command, String word) {
    CommandSpec spec = command.getCommandSpec();
    Stream<String> known =
        word.startsWith("-")
            ? spec.options().stream()
                .filter(option -> !option.hidden())
                .map(option -> option.longestName())
            : spec.subcommands().keySet().stream();
    JaroWinklerSimilarity likeness = new JaroWinklerSimilarity();
    String bare = bare(word);
    return known
        .filter(name -> likeness.apply(bare, bare(name)) >= ALIKE)
        .max(Comparator.comparing(name -> likeness.apply(bare, bare(name))));
  }

  private static String bare(String name) {
    return name.replaceFirst("^-+", "").replaceFirst("=.*", "");
  }
}
