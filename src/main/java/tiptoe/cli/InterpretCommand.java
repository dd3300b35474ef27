package tiptoe.cli;

import com.fasterxml.jackson.databind.node.ArrayNode;
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
import tiptoe.language.SecondReading;
import tiptoe.language.TypedText;
import tiptoe.report.RecordJson;
import tiptoe.session.ExamSession;
import tiptoe.session.Home;
import tiptoe.session.Sessions;
import tiptoe.session.Understanding;
import tiptoe.settings.Settings;
import tiptoe.wording.UtteranceWording;

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
      description = "Show what each word was taken for where no grammar covers all.")
  private boolean explain;

  @Mixin private SettingsOption option;

  @Override
  public Integer call() throws IOException {
    Settings settings = option.settings();
    Understanding understanding = Understanding.load(Home.locate());
    for (String text : texts()) {
      ExamSession session = Sessions.inMemory(understanding, settings);
      List<Explanation> explanations = new ArrayList<>();
      int at = 0;
      for (String sentence : TypedText.sentences(text)) {
        List<String> words = understanding.typed().utterance(sentence);
        explanations.add(new Explanation(TypedText.plain(words), session.meaning(words).spans()));
        session.dictate(sentence, words, at++);
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

  /** What the words of a sentence were taken for; no spans where the grammars cover all. */
  private record Explanation(List<String> words, List<SecondReading.Span> spans) {
    String words(SecondReading.Span span) {
      return String.join(" ", words.subList(span.from(), span.to()));
    }
  }

  private void print(ExamSession session, List<Explanation> explanations) {
    ExamRecord record = session.record();
    if (json) {
      ObjectNode node = RecordJson.of(record, session.assessment());
      for (int i = 0; i < explanations.size(); i++) {
        Explanation explanation = explanations.get(i);
        ArrayNode spans = ((ObjectNode) node.at("/utterances/" + i)).putArray("spans");
        explanation
            .spans()
            .forEach(
                span ->
                    spans
                        .addObject()
                        .put("label", span.label())
                        .put("words", explanation.words(span)));
      }
      Console.json(node);
      return;
    }
    for (int i = 0; i < record.utterances().size(); i++) {
      Console.out()
          .print(
              UtteranceWording.withSources(
                  record, record.utterances().get(i), session.wording().words()));
      if (i < explanations.size()) {
        Explanation explanation = explanations.get(i);
        explanation
            .spans()
            .forEach(
                span ->
                    Console.out().printf("    %-15s  %s%n", span.label(), explanation.words(span)));
      }
    }
  }
}
