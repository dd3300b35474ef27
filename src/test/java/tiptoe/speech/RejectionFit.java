package tiptoe.speech;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.DoublePredicate;
import java.util.stream.Stream;
import tiptoe.audio.AudioFile;
import tiptoe.audio.NoiseMixer;
import tiptoe.audio.Pcm;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpreter;
import tiptoe.language.Meaning;
import tiptoe.language.Source;
import tiptoe.language.TypedText;
import tiptoe.measure.Split;
import tiptoe.protocol.Protocol;

/**
 * Prints what each limit of {@code rejection.yaml} would give and cost: the whole trade-off, from
 * which the numbers there were chosen. The clips are those of {@code fit/speak.py}; talk is any
 * folder of recordings in which no phrase is said.
 *
 * <pre>
 * mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *   -Dexec.mainClass=tiptoe.speech.RejectionFit -Dexec.args="PHRASES TALK[,TALK…] [CRIES SNR]"
 * </pre>
 *
 * <p>Of the recordings of a folder, those whose name says neither {@code fit} nor {@code held} are
 * divided by {@link Split}; {@code -Dhalf=held-out} takes the other half.
 */
public final class RejectionFit {
  private static final Split HALF = Split.ofId(System.getProperty("half", "train"));

  /**
   * An utterance that means something.
   *
   * @param support of the whole utterance
   * @param rival whether words nearly as likely mean something else
   * @param right whether it means what was said; false for talk
   */
  private record Case(Verdict before, double support, boolean rival, boolean right) {}

  /** What was heard in one folder. */
  private record Folder(List<Case> cases, double hours, int clips) {
    double each(DoublePredicate support, boolean right) {
      return cases.stream()
          .filter(c -> c.right == right && c.before.outcome() == Outcome.ACCEPTED && !c.rival)
          .filter(c -> support.test(c.support))
          .count();
    }

    double unsure(double acceptedFrom, double unsureFrom) {
      return cases.stream()
          .filter(c -> c.before.outcome() != Outcome.IGNORED && c.support >= unsureFrom)
          .filter(c -> c.rival || c.before.outcome() == Outcome.UNSURE || c.support < acceptedFrom)
          .count();
    }
  }

  private final SpeechModel model;
  private final Interpreter interpreter;
  private final TypedText typed = TypedText.load(Path.of("grammars/spellings.txt"));

  /** Limits that leave the decision to this program. */
  private final Rejection open =
      new Rejection(
          new RejectionLimits(
              Double.NEGATIVE_INFINITY,
              Double.NEGATIVE_INFINITY,
              RejectionLimits.shipped().rivalWithin(),
              Double.NEGATIVE_INFINITY,
              1,
              1,
              Double.POSITIVE_INFINITY));

  private RejectionFit(SpeechModel model, PhraseNetwork network) throws IOException {
    this.model = model;
    this.interpreter = new Interpreter(network, Protocol.standard());
  }

  /** Folder of phrases, folders of talk, and the cries to mix in where wanted. */
  public static void main(String[] args) throws IOException {
    PhraseNetwork network = Clips.network();
    try (SpeechModel model = Clips.hearingTwice(network)) {
      RejectionFit fit = new RejectionFit(model, network);
      List<Pcm> cries = args.length < 4 ? List.of() : cries(Path.of(args[2]));
      double snr = args.length < 4 ? 0 : Double.parseDouble(args[3]);
      Folder phrases = fit.hear(Path.of(args[0]), true, cries, snr);
      List<Folder> talk = new ArrayList<>();
      for (String folder : args[1].split(",")) {
        talk.add(fit.hear(Path.of(folder), false, List.of(), 0));
      }
      print(phrases, talk);
    }
  }

  private static void print(Folder phrases, List<Folder> talk) {
    double hours = talk.stream().mapToDouble(Folder::hours).sum();
    System.out.printf("%d clips of phrases, %.1f min of talk%n", phrases.clips, hours * 60);
    System.out.println(
        "accepted-from | phrases right | unsure | wrong | talk accepted/h, unsure/h");
    for (double limit = -30; limit <= 2; limit += 2) {
      double from = limit;
      double unsureFrom = Math.min(limit, RejectionLimits.shipped().unsureFrom());
      System.out.printf(
          "%6.0f | %5.1f %% | %4.1f %% | %4.1f %% | %5.1f | %5.1f%n",
          limit,
          100 * phrases.each(s -> s >= from, true) / phrases.clips,
          100 * phrases.unsure(from, unsureFrom) / phrases.clips,
          100 * phrases.each(s -> s >= from, false) / phrases.clips,
          talk.stream().mapToDouble(f -> f.each(s -> s >= from, false)).sum() / hours,
          talk.stream().mapToDouble(f -> f.unsure(from, unsureFrom)).sum() / hours);
    }
  }

  private Folder hear(Path folder, boolean phrases, List<Pcm> cries, double snr)
      throws IOException {
    List<Case> cases = new ArrayList<>();
    double seconds = 0;
    int clips = 0;
    for (Path file : wavs(folder)) {
      if (!divided(folder) && !HALF.takes(file.getFileName().toString())) {
        continue;
      }
      Pcm sound = AudioFile.read(file);
      if (!cries.isEmpty()) {
        sound = NoiseMixer.mix(sound, cries.get(clips % cries.size()), snr, clips);
      }
      seconds += sound.seconds();
      clips++;
      List<Meaning> meant = phrases ? said(file) : null;
      try (Recogniser recogniser = model.recogniser()) {
        for (Utterance utterance : Clips.hear(recogniser, sound)) {
          judge(utterance, meant, cases);
        }
      }
    }
    return new Folder(cases, seconds / 3600, clips);
  }

  private void judge(Utterance utterance, List<Meaning> meant, List<Case> cases) {
    List<Meaning> heard = means(utterance.text());
    if (heard.isEmpty()) {
      return;
    }
    boolean rival = open.rivals(utterance).stream().anyMatch(other -> !means(other).equals(heard));
    double support = utterance.evidence().orElseThrow().support();
    cases.add(new Case(open.decide(utterance), support, rival, heard.equals(meant)));
  }

  private List<Meaning> means(String text) {
    List<String> words = text.isEmpty() ? List.of() : List.of(text.split(" "));
    return interpreter.interpret(words, Dialogue.START, Source.GRAMMAR).meanings();
  }

  private List<Meaning> said(Path wav) throws IOException {
    Path text = wav.resolveSibling(wav.getFileName().toString().replace(".wav", ".txt"));
    return means(String.join(" ", typed.words(Files.readString(text).strip())));
  }

  private static boolean divided(Path folder) {
    String name = folder.getFileName().toString();
    return name.startsWith("fit") || name.startsWith("held");
  }

  private static List<Pcm> cries(Path folder) throws IOException {
    List<Pcm> cries = new ArrayList<>();
    for (Path file : wavs(folder)) {
      cries.add(AudioFile.read(file));
    }
    return cries;
  }

  private static List<Path> wavs(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    }
  }
}
