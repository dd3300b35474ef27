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
import tiptoe.finding.Finding;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.language.SecondReading;
import tiptoe.language.TypedText;
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

  /**
   * How a sentence was understood.
   *
   * @param utterance index of the last utterance that was made of it; −1 for none
   */
  private record Explanation(int utterance, List<String> words, Interpretation meaning) {
    String words(SecondReading.Span span) {
      return String.join(" ", words.subList(span.from(), span.to()));
    }

    List<Interpretation.Certainty> certainties() {
      return meaning.howSure().stream()
          .filter(one -> one.meaning() instanceof Meaning.States)
          .toList();
    }

    static Finding finding(Interpretation.Certainty one) {
      return ((Meaning.States) one.meaning()).statement();
    }
  }

  private void print(ExamSession session, List<Explanation> explanations) {
    ExamRecord record = session.record();
    if (json) {
      ObjectNode node = RecordJson.of(record, session.assessment());
      explanations.stream()
          .filter(explanation -> explanation.utterance() >= 0)
          .forEach(
              explanation ->
                  explain(
                      explanation, (ObjectNode) node.at("/utterances/" + explanation.utterance())));
      Console.json(node);
      return;
    }
    for (int i = 0; i < record.utterances().size(); i++) {
      Console.out()
          .print(
              UtteranceWording.withSources(
                  record, record.utterances().get(i), session.wording().words()));
      int utterance = i;
      explanations.stream()
          .filter(explanation -> explanation.utterance() == utterance)
          .forEach(explanation -> explain(explanation, session.wording().words()));
    }
  }

  private static void explain(Explanation explanation, ObjectNode utterance) {
    ArrayNode spans = utterance.putArray("spans");
    explanation
        .meaning()
        .spans()
        .forEach(
            span ->
                spans.addObject().put("label", span.label()).put("words", explanation.words(span)));
    ArrayNode readings = utterance.putArray("readings");
    for (Interpretation.Certainty one : explanation.certainties()) {
      Finding finding = Explanation.finding(one);
      ObjectNode reading = readings.addObject().put("step", finding.step());
      if (finding.side() != null) {
        reading.put("side", finding.side().id());
      }
      if (finding.quantity() == null) {
        reading.put("value", finding.value());
      } else {
        reading.put("number", finding.quantity().number()).put("unit", finding.quantity().unit());
        if (finding.quantity().comparator() != null) {
          reading.put("comparator", finding.quantity().comparator().sign());
        }
      }
      reading.put("sure", one.sure()).put("why", one.why());
    }
  }

  private static void explain(Explanation explanation, Words words) {
    explanation
        .meaning()
        .spans()
        .forEach(
            span -> Console.out().printf("    %-15s  %s%n", span.label(), explanation.words(span)));
    explanation
        .certainties()
        .forEach(
            one ->
                Console.out()
                    .printf(
                        "    %-15s  %s (%s)%n",
                        one.sure() ? "sure" : "not sure",
                        words.of(Explanation.finding(one)),
                        one.why()));
  }
}
