package tiptoe.screen.review;

import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Heard;
import tiptoe.exam.RecordedFinding;
import tiptoe.exam.Utterance;

/**
 * Where an item of the record comes from.
 *
 * @param words as heard or typed; empty where there are none
 * @param outcome what became of the utterance; empty where there is none
 * @param source how it was understood; empty where nothing was
 * @param confidence of the least sure word, 0–1, by the recogniser; null where it is not known
 * @param from second of the sound at which it begins; null where there is no sound of it
 * @param to second at which it ends; null where {@code from} is
 * @param author the reviewer; null where the clinician spoke
 */
public record Provenance(
    String words,
    String outcome,
    String source,
    Double confidence,
    Double from,
    Double to,
    String author) {
  static final Provenance NONE = new Provenance("", "", "", null, null, null, null);

  static Provenance of(Utterance utterance) {
    Heard heard = utterance.heard();
    boolean sound = heard.end() > heard.start();
    String reason = heard.reason() == null || heard.reason().isBlank() ? "" : heard.reason();
    return new Provenance(
        heard.text(),
        heard.outcome().id() + (reason.isEmpty() ? "" : " (" + reason + ")"),
        "",
        confidence(heard),
        sound ? heard.start() : null,
        sound ? heard.end() : null,
        null);
  }

  static Provenance of(ExamRecord record, Integer utterance, String source, String author) {
    Provenance heard =
        utterance == null ? NONE : record.utterance(utterance).map(Provenance::of).orElse(NONE);
    return new Provenance(
        heard.words, heard.outcome, source, heard.confidence, heard.from, heard.to, author);
  }

  static Provenance of(ExamRecord record, RecordedFinding said) {
    return of(record, said.utterance(), said.statement().source().id(), said.author());
  }

  static Provenance at(double from, double to, String author) {
    boolean sound = to > from;
    return new Provenance("", "", "", null, sound ? from : null, sound ? to : null, author);
  }

  private static Double confidence(Heard heard) {
    return heard.words().isEmpty() ? null : heard.confidence().getAsDouble();
  }

  public boolean hasSound() {
    return from != null;
  }

  /** Such as {@code 01:23}; empty where there is no sound. */
  String clock() {
    return from == null ? "" : clock(from).substring(0, 5);
  }

  /** Minutes, seconds and tenths: {@code 01:23.4}. */
  static String clock(double seconds) {
    long tenths = Math.round(seconds * 10);
    return String.format(Locale.ROOT, "%02d:%02d.%d", tenths / 600, tenths / 10 % 60, tenths % 10);
  }

  public String text() {
    return Stream.of(
            words.isEmpty() ? "" : "\"" + words + "\"",
            from == null ? "" : clock(from) + " to " + clock(to),
            outcome,
            source.isEmpty() ? "" : "by " + source,
            confidence == null
                ? ""
                : String.format(Locale.ROOT, "least sure word %.2f", confidence),
            author == null ? "" : "by " + author)
        .filter(part -> !part.isEmpty())
        .collect(Collectors.joining(", "));
  }
}
