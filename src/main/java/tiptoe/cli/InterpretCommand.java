package tiptoe.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.language.TypedText;
import tiptoe.report.RecordJson;
import tiptoe.settings.Settings;

/** Says what typed text means. */
@Command(
    name = "interpret",
    mixinStandardHelpOptions = true,
    description = {
      "Says what typed text would mean if it were dictated.",
      "Each TEXT is an examination of its own; its sentences follow each other as utterances."
    },
    footer = {"", "Example: tiptoe interpret \"left clavicle crepitus, right fine\""})
final class InterpretCommand implements Callable<Integer> {
  @Parameters(paramLabel = "TEXT", arity = "1..*", description = "What is said.")
  private List<String> texts;

  @Option(names = "--json", description = "Print one JSON object for each TEXT.")
  private boolean json;

  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    Settings settings = option.settings();
    Understanding understanding = Understanding.load(Home.locate());
    for (String text : texts) {
      Session session = Sessions.inMemory(understanding, settings);
      int at = 0;
      for (String sentence : TypedText.sentences(text)) {
        session.type(sentence, understanding.typed().words(sentence), at++);
      }
      if (json) {
        ObjectNode node = RecordJson.of(session.record(), session.assessment());
        Console.out().println(node);
      } else {
        Console.out().print(UtteranceText.of(session.record()));
      }
    }
    return 0;
  }
}
