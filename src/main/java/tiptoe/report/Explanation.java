package tiptoe.report;

import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.clinical.Assessment;
import tiptoe.exam.ExamRecord;
import tiptoe.finding.Finding;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.language.SecondReading;
import tiptoe.wording.UtteranceWording;
import tiptoe.wording.Words;

/**
 * How a sentence was understood: what each word was taken for, and how sure each finding is.
 *
 * @param utterance index of the last utterance that was made of it; −1 for none
 */
public record Explanation(int utterance, List<String> words, Interpretation meaning) {
  /** A record as JSON, with how its sentences were understood. */
  public static ObjectNode json(
      ExamRecord record, Assessment assessment, List<Explanation> explanations) {
    ObjectNode node = RecordJson.of(record, assessment);
    explanations.stream()
        .filter(one -> one.utterance() >= 0)
        .forEach(one -> one.addTo((ObjectNode) node.at("/utterances/" + one.utterance())));
    return node;
  }

  /**
   * The utterances of a record for people, each with the facts about the baby that it stated.
   *
   * @param whole with how each was understood as well
   */
  public static String text(
      ExamRecord record, Words words, List<Explanation> explanations, boolean whole) {
    StringBuilder text = new StringBuilder();
    for (int i = 0; i < record.utterances().size(); i++) {
      int utterance = i;
      text.append(UtteranceWording.withSources(record, record.utterances().get(i), words));
      explanations.stream()
          .filter(one -> one.utterance() == utterance)
          .forEach(
              one -> text.append(one.facts(record, words)).append(whole ? one.text(words) : ""));
    }
    return text.toString();
  }

  /** The facts that it stated and that stand so; what is asked about first does not. */
  private String facts(ExamRecord record, Words wording) {
    return meaning
        .of(Meaning.Fact.class)
        .filter(fact -> record.baby().fact(fact.id()).filter(fact.value()::equals).isPresent())
        .map(fact -> "  " + wording.stated(fact.id(), fact.value()) + "\n")
        .collect(Collectors.joining());
  }

  /** Adds it to the utterance in the JSON of a record. */
  private void addTo(ObjectNode utterance) {
    ArrayNode spans = utterance.putArray("spans");
    meaning
        .spans()
        .forEach(span -> spans.addObject().put("label", span.label()).put("words", words(span)));
    if (meaning.talk() > 0) {
      utterance.put("talk", meaning.talk());
    }
    ArrayNode readings = utterance.putArray("readings");
    certainties().forEach(one -> add(one, readings.addObject()));
  }

  private static void add(Interpretation.Certainty one, ObjectNode reading) {
    Finding finding = finding(one);
    reading.put("step", finding.step());
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

  private String text(Words wording) {
    String talk =
        meaning.talk() > 0
            ? String.format(Locale.ROOT, "    sounds like talk: %.2f%n", meaning.talk())
            : "";
    return Stream.concat(
            Stream.concat(
                Stream.of(talk),
                meaning.spans().stream().map(span -> row(span.label(), words(span)))),
            certainties()
                .map(
                    one ->
                        row(
                            one.sure() ? "sure" : "not sure",
                            wording.of(finding(one)) + " (" + one.why() + ")")))
        .collect(Collectors.joining());
  }

  private static String row(String label, String text) {
    return String.format(Locale.ROOT, "    %-15s  %s%n", label, text);
  }

  private String words(SecondReading.Span span) {
    return String.join(" ", words.subList(span.from(), span.to()));
  }

  private Stream<Interpretation.Certainty> certainties() {
    return meaning.howSure().stream().filter(one -> one.meaning() instanceof Meaning.States);
  }

  private static Finding finding(Interpretation.Certainty one) {
    return ((Meaning.States) one.meaning()).statement();
  }
}
