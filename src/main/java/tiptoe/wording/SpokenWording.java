package tiptoe.wording;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import tiptoe.exam.Changes;
import tiptoe.exam.Event;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Offer;
import tiptoe.finding.Bound;
import tiptoe.finding.Command;

/** What a voice says of what an utterance came to: result, side and number, and what is asked. */
public final class SpokenWording {
  private static final Pattern BRACKETS = Pattern.compile(" ?\\([^)]*\\)");

  private SpokenWording() {}

  /**
   * The sentences to speak, in order; none where there is nothing to say.
   *
   * @param results whether results are read back, and not only questions and what was asked for
   */
  public static List<String> of(Changes changes, Words words, boolean results) {
    List<String> said = new ArrayList<>();
    ExamRecord record = changes.record();
    OutcomeWording outcome = OutcomeWording.of(changes, words);
    List<String> replies =
        changes.commands().stream()
            .flatMap(command -> reply(command, record, words).stream())
            .toList();
    if (results && replies.isEmpty()) {
      outcome.lines().stream()
          .filter(line -> !line.isOffer())
          .forEach(line -> said.add(result(line)));
    }
    replies.forEach(said::add);
    record
        .toConfirm()
        .filter(offer -> offer.way() == Offer.Way.TOGETHER)
        .filter(offer -> changes.of(Event.OfferAsked.class).findAny().isPresent())
        .ifPresentOrElse(
            offer -> said.add(together(offer, words) + "; yes to all?"),
            () ->
                outcome.lines().stream()
                    .filter(OutcomeWording.Line::isOffer)
                    .forEach(line -> said.add("not recorded: " + offered(line.text()))));
    if (changes.of(Event.EndAsked.class).findAny().isPresent()) {
      said.add(beforeEnd(record, words));
    } else if (!changes.questions().isEmpty()) {
      record
          .openQuestion()
          .map(asked -> words.spelled(asked.question().text()))
          .ifPresent(question -> said.add(question.replace(" (", ", ").replace(")", "")));
    }
    return said.stream().map(SpokenWording::aloud).filter(text -> !text.isBlank()).toList();
  }

  private static List<String> reply(Command command, ExamRecord record, Words words) {
    return command == Command.SAY_MISSING
        ? CommandReply.missingAloud(record, words)
        : CommandReply.of(command, record, words);
  }

  private static String together(Offer offer, Words words) {
    return "not recorded: " + String.join("; ", CommandReply.numbered(offer, words));
  }

  private static String beforeEnd(ExamRecord record, Words words) {
    int missing = record.missingKeyStepsBesideOffers().size();
    List<String> open = new ArrayList<>();
    if (missing > 0) {
      open.add(missing + " key steps are missing");
    }
    record
        .toConfirm()
        .map(offer -> together(offer, words) + "; yes to all records them")
        .ifPresent(open::add);
    return open.isEmpty() ? CommandReply.END : String.join(", ", open) + ", end anyway?";
  }

  private static String offered(String shown) {
    return shown.replace("(", "").replace(")", "");
  }

  private static String result(OutcomeWording.Line line) {
    String label = line.label().toLowerCase(Locale.ROOT);
    return label.equals("recorded") ? line.text() : line.shown().replace(line.label(), label);
  }

  /** Without what is for the eye alone, and with units as they are said. */
  private static String aloud(String text) {
    return BRACKETS
        .matcher(text.replace(Words.BOTH_SIDES, " on both sides"))
        .replaceAll("")
        .replace(" —", ",")
        .replace(": ", ", ")
        .replaceAll("< (?=\\d)", Bound.UNDER.words() + " ")
        .replaceAll("> (?=\\d)", Bound.OVER.words() + " ")
        .replaceAll("<= (?=\\d)", Bound.AT_MOST.words() + " ")
        .replaceAll(">= (?=\\d)", Bound.AT_LEAST.words() + " ")
        .replaceAll("(?<=\\d) s\\b", " seconds")
        .replaceAll("(?<=\\d) g\\b", " grams")
        .replaceAll("(?<=\\d) cm\\b", " centimetres")
        .replaceAll("(?<=\\d) °C", " degrees")
        .strip();
  }
}
