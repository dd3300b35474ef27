package tiptoe.cli;

import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tiptoe.exam.ExamRecord;
import tiptoe.language.Interpretation;
import tiptoe.language.TypedText;
import tiptoe.report.Explanation;
import tiptoe.report.RecordJson;
import tiptoe.session.ExamSession;
import tiptoe.session.Home;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.wording.UtteranceWording;
import tiptoe.wording.Words;

/** Says what typed text means. */
@Command(
    name = "interpret",
    mixinStandardHelpOptions = true,
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
      print(session, explain ? explanations : List.of());
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
    ExamRecord record = session.record();
    if (json) {
      ObjectNode node = RecordJson.of(record, session.assessment());
      explanations.stream()
          .filter(explanation -> explanation.utterance() >= 0)
          .forEach(
              explanation ->
                  explanation.addTo(
                      (ObjectNode) node.at("/utterances/" + explanation.utterance())));
      Console.json(node);
      return;
    }
    Words words = session.wording().words();
    for (int i = 0; i < record.utterances().size(); i++) {
      Console.out().print(UtteranceWording.withSources(record, record.utterances().get(i), words));
      int utterance = i;
      explanations.stream()
          .filter(explanation -> explanation.utterance() == utterance)
          .forEach(explanation -> Console.out().print(explanation.text(words)));
    }
  }
}
