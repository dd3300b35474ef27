package tiptoe.cli;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.language.Interpretation;
import tiptoe.language.TypedText;
import tiptoe.report.Explanation;
import tiptoe.session.ExamSession;
import tiptoe.session.Home;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;

/** Says what typed text means. */
@Command(
    name = "interpret",
    description = {
      "Says what typed text would mean if it were dictated.",
      "Each quoted TEXT is an examination of its own; its sentences follow each other as"
          + " utterances.",
      "Single words without quotes are one TEXT."
    },
    footer = {"", "Example: tiptoe interpret \"left clavicle crepitus, right fine\""})
final class InterpretCommand implements Callable<Integer> {
  @Parameters(paramLabel = "TEXT", arity = "1..*", description = "What is said.")
  private List<String> texts;

  @Option(names = "--json", description = "Print one JSON object for each TEXT.")
  private boolean json;

  @Option(
      names = "--explain",
      description = {
        "Show how sure the reading of each finding is and why, and what each word",
        "was taken for where no grammar covers all."
      })
  private boolean explain;

  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    Settings settings = option.settings();
    Understanding understanding = Understanding.load(Home.of(option.protocol()));
    for (String text : texts()) {
      ExamSession session = Sessions.inMemory(understanding, settings);
      List<Explanation> explanations = new ArrayList<>();
      int at = 0;
      for (String sentence : TypedText.sentences(text)) {
        List<String> words = understanding.typed().utterance(sentence);
        Interpretation meaning = session.meaning(words);
        session.dictate(sentence, words, at++);
        explanations.add(
            new Explanation(
                session.record().utterances().size() - 1, TypedText.plain(words), meaning));
      }
      print(session, explanations);
    }
    return 0;
  }

  /** Where nothing was quoted, all words are one text. */
  private List<String> texts() {
    return texts.stream().allMatch(text -> text.strip().indexOf(' ') < 0)
        ? List.of(String.join(" ", texts))
        : texts;
  }

  private void print(ExamSession session, List<Explanation> explanations) {
    if (json) {
      Console.json(
          Explanation.json(
              session.record(), session.assessment(), explain ? explanations : List.of()));
    } else {
      Console.out()
          .print(
              Explanation.text(session.record(), session.wording().words(), explanations, explain));
    }
  }
}
