package tiptoe.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tiptoe.audio.AudioFile;
import tiptoe.audio.NoiseMixer;
import tiptoe.audio.Pcm;
import tiptoe.finding.Source;
import tiptoe.language.Dialogue;
import tiptoe.language.Interpreter;
import tiptoe.language.Meaning;
import tiptoe.language.TypedText;
import tiptoe.measure.Split;
import tiptoe.protocol.Protocol;
import tiptoe.session.Engine;
import tiptoe.session.Home;
import tiptoe.session.LikelihoodVerifier;
import tiptoe.session.Understanding;
import tiptoe.speech.Evidence;
import tiptoe.speech.FreeWording;
import tiptoe.speech.Hypothesis;
import tiptoe.speech.Recogniser;

/**
 * Prints what the limits of {@code rejection.yaml} would give and cost: the trade-off from which
 * the numbers there were chosen. The clips are those of {@code fit/speak.py}; talk is any folder of
 * recordings in which no phrase is said.
 *
 * <pre>
 * mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *   -Dexec.mainClass=tiptoe.cli.RejectionFit -Dexec.args="PHRASES TALK[,TALK…] [CRIES SNR]"
 * </pre>
 *
 * <p>Cries are mixed into phrases and talk. Of the recordings of a folder, those whose name says
 * neither {@code fit} nor {@code held} are divided by {@link Split}, and so are the cries; {@code
 * -Dhalf=held-out} takes the other half.
 */
public final class RejectionFit {
  private static final Split HALF = Split.ofId(System.getProperty("half", "train"));
  private static final LikelihoodVerifier REJECTION = LikelihoodVerifier.standard();

  /** {@code accepted-from} and {@code free-seconds}, which are not varied here. */
  private static final double SHORT_FROM = -10;

  private static final double SHORT = 1.2;

  /**
   * An utterance of phrases only that means something.
   *
   * @param support of its phrases
   * @param other support of free wordings of another meaning; negative infinity for none
   * @param contested whether it was heard in free wordings, and is not short
   * @param rival whether words nearly as likely mean something else
   * @param right whether it means what was said; false for talk
   */
  private record Case(
      double support, double other, boolean contested, boolean rival, boolean right) {
    boolean accepted(double contestedFrom, double betterBy) {
      return !rival
          && support >= (contested ? contestedFrom : SHORT_FROM)
          && other <= support + betterBy;
    }
  }

  /** What was heard in one folder. */
  private record Folder(List<Case> cases, double seconds, int clips) {
    long count(Predicate<Case> wanted) {
      return cases.stream().filter(wanted).count();
    }
  }

  private final Engine engine;
  private final Interpreter interpreter;
  private final TypedText typed;

  private RejectionFit(Engine engine, Understanding understanding) {
    this.engine = engine;
    this.interpreter = new Interpreter(understanding.network(), Protocol.standard());
    this.typed = understanding.typed();
  }

  /** Folder of phrases, folders of talk, and the cries to mix in where wanted. */
  public static void main(String[] args) throws IOException {
    Home home = Home.locate();
    Understanding understanding = Understanding.load(home);
    try (Engine engine = Engine.open(home, understanding, null, System.err)) {
      RejectionFit fit = new RejectionFit(engine, understanding);
      List<Pcm> cries = args.length < 4 ? List.of() : cries(Path.of(args[2]));
      double snr = args.length < 4 ? 0 : Double.parseDouble(args[3]);
      Folder phrases = fit.hear(Path.of(args[0]), true, cries, snr);
      List<Folder> talk = new ArrayList<>();
      for (String folder : args[1].split(",")) {
        talk.add(fit.hear(Path.of(folder), false, cries, snr));
      }
      print(phrases, talk);
    }
  }

  private static void print(Folder phrases, List<Folder> talk) {
    System.out.printf(
        "%d clips of phrases, %.1f %% heard right; talk of %s min%n",
        phrases.clips,
        100.0 * phrases.count(Case::right) / phrases.clips,
        talk.stream().map(one -> "%.1f".formatted(one.seconds / 60)).toList());
    System.out.println("contested-from, free-better-by | right | wrong | talk accepted");
    for (double from : new double[] {-10, -14, -18, -22}) {
      for (double by : new double[] {5, 3, 1, 0}) {
        Predicate<Case> accepted = one -> one.accepted(from, by);
        System.out.printf(
            "%4.0f, %1.0f | %5.1f %% | %4.1f %% | %s%n",
            from,
            by,
            100.0 * phrases.count(accepted.and(Case::right)) / phrases.clips,
            100.0 * phrases.count(accepted.and(one -> !one.right)) / phrases.clips,
            talk.stream().map(one -> one.count(accepted)).toList());
      }
    }
  }

  private Folder hear(Path folder, boolean phrases, List<Pcm> cries, double snr)
      throws IOException {
    List<Path> files = wavs(folder).stream().filter(file -> isTaken(folder, file)).toList();
    List<Folder> each =
        IntStream.range(0, files.size())
            .parallel()
            .mapToObj(
                at -> {
                  Pcm sound = read(files.get(at));
                  Pcm mixed =
                      cries.isEmpty()
                          ? sound
                          : NoiseMixer.mix(sound, cries.get(at % cries.size()), snr, at);
                  return hear(mixed, phrases ? said(files.get(at)) : null);
                })
            .toList();
    return new Folder(
        each.stream().flatMap(one -> one.cases.stream()).toList(),
        each.stream().mapToDouble(Folder::seconds).sum(),
        files.size());
  }

  private Folder hear(Pcm sound, List<Meaning> meant) {
    List<Case> cases = new ArrayList<>();
    try (Recogniser recogniser = engine.recogniser()) {
      List<Hypothesis> heard = new ArrayList<>(recogniser.accept(sound));
      recogniser.finish().ifPresent(heard::add);
      heard.forEach(utterance -> judge(utterance, meant, cases));
    }
    return new Folder(cases, sound.seconds(), 1);
  }

  private void judge(Hypothesis utterance, List<Meaning> meant, List<Case> cases) {
    List<Meaning> heard = means(utterance.text());
    if (heard.isEmpty() || utterance.hasFiller()) {
      return;
    }
    Evidence evidence = utterance.evidence().orElseThrow();
    boolean rival =
        REJECTION.rivals(utterance).stream().anyMatch(other -> !means(other).equals(heard));
    double other =
        utterance
            .otherwise()
            .filter(wording -> !means(wording.text()).equals(heard))
            .map(FreeWording::support)
            .orElse(Double.NEGATIVE_INFINITY);
    boolean contested =
        utterance.otherwise().isPresent() && utterance.end() - utterance.start() >= SHORT;
    cases.add(new Case(evidence.support(), other, contested, rival, heard.equals(meant)));
  }

  private List<Meaning> means(String text) {
    return means(text.isEmpty() ? List.of() : List.of(text.split(" ")));
  }

  private List<Meaning> means(List<String> words) {
    return interpreter.interpret(words, Dialogue.START, Source.GRAMMAR).meanings();
  }

  private List<Meaning> said(Path wav) {
    Path text = wav.resolveSibling(wav.getFileName().toString().replace(".wav", ".txt"));
    try {
      return means(typed.words(Files.readString(text).strip()));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static Pcm read(Path file) {
    try {
      return AudioFile.read(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static boolean isTaken(Path folder, Path file) {
    String name = folder.getFileName().toString();
    boolean divided = name.startsWith("fit") || name.startsWith("held");
    return divided || HALF.takes(file.getFileName().toString());
  }

  private static List<Pcm> cries(Path folder) throws IOException {
    return wavs(folder).stream()
        .filter(file -> HALF.takes(file.getFileName().toString()))
        .map(RejectionFit::read)
        .toList();
  }

  private static List<Path> wavs(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    }
  }
}
