package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import picocli.CommandLine;

/** Every command's help shows how it is used, by lines that it takes. */
class HelpTest {
  private static final Pattern WORD = Pattern.compile("\"([^\"]*)\"|\\S+");

  private static Stream<Arguments> commands() {
    return Tiptoe.commandLine().getSubcommands().values().stream()
        .map(command -> arguments(command.getCommandName()));
  }

  @ParameterizedTest
  @MethodSource("commands")
  void helpHasExamplesThatTheCommandTakes(String name) {
    CommandLine tiptoe = Tiptoe.commandLine();
    String help = tiptoe.getSubcommands().get(name).getUsageMessage(CommandLine.Help.Ansi.OFF);
    List<String> examples = examples(help);
    assertTrue(!examples.isEmpty(), help);
    for (String example : examples) {
      assertTrue(example.startsWith("tiptoe " + name), example);
      String[] words = words(example);
      CommandLine.ParseResult parsed =
          Tiptoe.commandLine().parseArgs(Arrays.copyOfRange(words, 1, words.length));
      assertEquals(name, parsed.subcommand().commandSpec().name(), example);
    }
  }

  private static List<String> examples(String help) {
    int at = help.indexOf("Example:");
    return at < 0
        ? List.of()
        : help.substring(at + "Example:".length())
            .replaceAll("\\\\\\s*\\R\\s*", "")
            .lines()
            .map(String::strip)
            .takeWhile(line -> line.startsWith("tiptoe"))
            .toList();
  }

  /**
   * As a shell takes them apart, with double quotes; what goes into a file is for the shell alone.
   */
  private static String[] words(String line) {
    List<String> words = new ArrayList<>();
    Matcher matcher = WORD.matcher(line.replaceFirst(" > \\S+$", ""));
    while (matcher.find()) {
      words.add(matcher.group(1) == null ? matcher.group() : matcher.group(1));
    }
    return words.toArray(String[]::new);
  }
}
