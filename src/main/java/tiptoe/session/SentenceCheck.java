package tiptoe.session;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import tiptoe.audio.Level;
import tiptoe.audio.SoundCheck;
import tiptoe.exam.Heard;
import tiptoe.speech.Hypothesis;

/**
 * How well a sentence that was asked for was heard.
 *
 * @param lines what was measured and heard, for people
 * @param problem why it cannot be judged; empty where it can
 * @param heard whether more than half of its words were
 */
public record SentenceCheck(List<String> lines, String problem, boolean heard) {
  /** What is asked for: long, usual, and with a word that is rare elsewhere. */
  public static final List<String> SENTENCE =
      List.of("anterior", "fontanelle", "open", "soft", "and", "flat");

  /** Judges what was said when {@link #SENTENCE} was asked for. */
  public static SentenceCheck of(TrialSentence said, Understanding understanding) {
    Level level = said.sound().level();
    if (level.isSilent()) {
      return new SentenceCheck(
          List.of(), "expected sound, found that the microphone is mute", false);
    }
    List<String> lines = new ArrayList<>(lines(sound(said)));
    if (said.text().isEmpty()) {
      return new SentenceCheck(
          lines, "expected the sentence, heard nothing of the examination", false);
    }
    List<String> words = List.of(said.text().split(" "));
    int right = right(words);
    lines.add("heard: " + said.text());
    lines.add("words: %d of %d right".formatted(right, SENTENCE.size()));
    ExamSession session = Sessions.inMemory(understanding);
    said.heard().forEach(utterance -> session.hear(utterance, 0));
    session.record().utterances().forEach(utterance -> lines.add(outcome(utterance.heard())));
    lines.add(
        words.equals(SENTENCE)
            ? "heard well"
            : "not heard well: say it again, and check the advice");
    return new SentenceCheck(lines, "", right > SENTENCE.size() / 2);
  }

  /** Where nothing was heard, all of it is measured: it may have been said too softly. */
  private static SoundCheck sound(TrialSentence said) {
    List<Hypothesis> heard = said.heard();
    double end = said.sound().seconds();
    return heard.isEmpty()
        ? SoundCheck.of(said.sound(), 0, end)
        : SoundCheck.of(
            said.sound(), heard.get(0).start(), Math.min(end, heard.get(heard.size() - 1).end()));
  }

  private static List<String> lines(SoundCheck check) {
    String beside =
        check.noiseDb() > Level.SILENCE
            ? String.format(
                Locale.ROOT,
                ", noise %.0f dB, so %.0f dB above the noise",
                check.noiseDb(),
                check.aboveNoiseDb())
            : "";
    String cut = check.clipped() == 0 ? "nothing cut off" : check.clipped() + " samples cut off";
    List<String> lines = new ArrayList<>();
    lines.add(String.format(Locale.ROOT, "level: %.0f dB%s; %s", check.speechDb(), beside, cut));
    check.advice().forEach(line -> lines.add("advice: " + line));
    return lines;
  }

  private static String outcome(Heard heard) {
    String reason = heard.reason() == null || heard.reason().isEmpty() ? "" : ", " + heard.reason();
    return "taken as: " + heard.outcome().id() + reason;
  }

  /** Length of the longest common subsequence: words that were heard, in their order. */
  private static int right(List<String> heard) {
    int[] above = new int[SENTENCE.size() + 1];
    for (String word : heard) {
      int[] row = new int[above.length];
      for (int j = 1; j < row.length; j++) {
        row[j] =
            word.equals(SENTENCE.get(j - 1)) ? above[j - 1] + 1 : Math.max(above[j], row[j - 1]);
      }
      above = row;
    }
    return Arrays.stream(above).max().orElse(0);
  }
}
