package tiptoe.screen;

import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.Asked;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Offer;
import tiptoe.exam.Slot;
import tiptoe.finding.Question;
import tiptoe.wording.CommandReply;
import tiptoe.wording.RecordWording;
import tiptoe.wording.Words;

/**
 * The one thing that the examination waits for.
 *
 * @param headline in a word or two
 * @param text in full
 * @param answers what can be said to it; empty where the text says so itself
 */
record Prompt(String headline, String text, String answers) {
  private static final String TOGETHER =
      "\"yes to all\" to record them, \"not the second\" to leave one out, \"no\" to leave all out";

  /** Empty while nothing is waited for. */
  static Optional<Prompt> of(RecordWording wording) {
    return switch (wording.record().phase()) {
      case PAUSED ->
          Optional.of(
              new Prompt(
                  "paused",
                  asked(wording, Question.Kind.COMMAND)
                      .orElse("Nothing is heard and nothing is kept."),
                  Voice.RESUME.quoted()));
      case REMARK ->
          Optional.of(
              new Prompt(
                  "remark", "All that is said is kept as a remark.", Voice.END_REMARK.quoted()));
      case ENDING -> Optional.of(ending(wording));
      default ->
          readOut(wording)
              .or(() -> offered(wording))
              .or(
                  () ->
                      wording
                          .record()
                          .openQuestion()
                          .map(Asked::question)
                          .map(question -> of(question, wording.words())));
    };
  }

  private static Optional<Prompt> readOut(RecordWording wording) {
    return wording
        .record()
        .toConfirm()
        .filter(offer -> offer.way() == Offer.Way.TOGETHER)
        .map(
            offer ->
                new Prompt(
                    offer.places().size() + " not recorded",
                    CommandReply.offered(wording.record(), wording.words()),
                    TOGETHER));
  }

  /** What a yes records goes before an older question, which that yes would not answer. */
  private static Optional<Prompt> offered(RecordWording wording) {
    Words words = wording.words();
    return wording
        .record()
        .openQuestion()
        .flatMap(
            waits ->
                wording
                    .record()
                    .toConfirm()
                    .map(offer -> offer.utterances().get(0).offered())
                    .map(
                        seems ->
                            new Prompt(
                                "record it?",
                                words.seems(seems)
                                    + "? Then: "
                                    + words.spelled(waits.question().text()),
                                "\"yes\" to record it, \"no\" to leave it out"
                                    + (seems.size() > 1 ? ", or only which" : ""))));
  }

  private static Optional<String> asked(RecordWording wording, Question.Kind kind) {
    return wording
        .record()
        .openQuestion()
        .map(Asked::question)
        .filter(question -> question.kind() == kind)
        .map(question -> wording.words().spelled(question.text()));
  }

  private static Prompt ending(RecordWording wording) {
    ExamRecord record = wording.record();
    List<Slot> keys = record.missingKeyStepsBesideOffers();
    List<String> missing = CommandReply.names(keys, record, wording.words());
    String count = keys.size() + (keys.size() == 1 ? " key step is" : " key steps are");
    Stream<String> pressing =
        wording.record().pressing().stream()
            .map(flag -> "NOT SETTLED, " + flag.level() + ", confirm now: " + flag.text())
            .map(wording.words()::spelled);
    Stream<String> steps =
        missing.isEmpty()
            ? Stream.empty()
            : Stream.of(count + " missing: " + String.join(", ", missing));
    Stream<String> offers =
        record.offers().isEmpty()
            ? Stream.empty()
            : Stream.of("not recorded: " + CommandReply.offered(record, wording.words()));
    boolean clear = missing.isEmpty() && record.pressing().isEmpty() && record.offers().isEmpty();
    return new Prompt(
        clear ? "end?" : "end anyway?",
        Stream.of(pressing, offers, steps)
            .flatMap(lines -> lines)
            .collect(Collectors.joining("; ")),
        (record.offers().isEmpty() ? "" : "\"yes to all\" to record them, ")
            + Voice.END.quoted()
            + " or \"yes\" to end, \"no\" to go on");
  }

  private static Prompt of(Question question, Words words) {
    return new Prompt(headline(question, words), words.spelled(question.text()), answers(question));
  }

  private static String headline(Question question, Words words) {
    return switch (question.kind()) {
      case SIDE -> "which side?";
      case DETAIL -> words.label(question.detail()) + "?";
      case NUMBER -> "what number?";
      case CONTRADICTION -> "which is right?";
      case STEP -> "of what?";
      case FACT -> words.label(question.detail()) + "?";
      case COMMAND -> "is that for me?";
    };
  }

  // The text of the other questions says itself what can be answered.
  private static String answers(Question question) {
    String again = question.kind() == Question.Kind.NUMBER ? "the number again" : "all of it again";
    return question.lapsesByNo() ? again + ", or \"no\" to leave it out" : "";
  }
}
