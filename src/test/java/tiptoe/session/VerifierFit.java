package tiptoe.session;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import tiptoe.audio.AudioFile;
import tiptoe.audio.NoiseMixer;
import tiptoe.audio.Pcm;
import tiptoe.finding.Outcome;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.measure.Split;
import tiptoe.speech.Hypothesis;

/**
 * Prints what the limits of {@code verifier.yaml} would give and cost: the trade-off from which the
 * numbers there were chosen. The clips are those of {@code fit/speak.py}; talk is any folder of
 * recordings in which no phrase is said.
 *
 * <pre>
 * mvn -q test-compile exec:java -Dexec.classpathScope=test \
 *   -Dexec.mainClass=tiptoe.session.VerifierFit -Dexec.args="PHRASES TALK[,TALK…] [CRIES SNR]"
 * </pre>
 *
 * <p>Cries are mixed into phrases and talk. Of the recordings of a folder, those whose name says
 * neither {@code fit} nor {@code held} are divided by {@link Split}, and so are the cries; {@code
 * -Dhalf=held-out} takes the other half.
 */
public final class VerifierFit {
  private static final Split HALF = Split.ofId(System.getProperty("half", "train"));
  private static final VerifierLimits LIMITS = VerifierLimits.shipped();

  /**
   * An utterance.
   *
   * @param meant what was said; null for talk
   */
  private record Heard(Hypothesis utterance, List<Meaning> meant) {}

  /** What was heard in one folder. */
  private record Folder(List<Heard> heard, double seconds, int clips) {}

  private final Hearing hearing = Hearing.loaded();
  private final Map<List<String>, Interpretation> interpreted = new HashMap<>();

  private VerifierFit() {}

  /** Folder of phrases, folders of talk, and the cries to mix in where wanted. */
  public static void main(String[] args) throws IOException {
    VerifierFit fit = new VerifierFit();
    List<Pcm> cries = args.length < 4 ? List.of() : cries(Path.of(args[2]));
    double snr = args.length < 4 ? 0 : Double.parseDouble(args[3]);
    Folder phrases = fit.hear(Path.of(args[0]), true, cries, snr);
    List<Folder> talk = new ArrayList<>();
    for (String folder : args[1].split(",")) {
      talk.add(fit.hear(Path.of(folder), false, cries, snr));
    }
    fit.print(phrases, talk);
  }

  private void print(Folder phrases, List<Folder> talk) {
    System.out.printf(
        "%d clips of phrases; talk of %s min%n",
        phrases.clips, talk.stream().map(one -> "%.1f".formatted(one.seconds / 60)).toList());
    System.out.println("contested-from, free-better-by | right | wrong | talk accepted");
    for (double from : new double[] {-10, -14, -18, -22}) {
      for (double by : new double[] {5, 3, 1, 0}) {
        UtteranceVerifier verifier = verifier(from, by);
        System.out.printf(
            "%4.0f, %1.0f | %5.1f %% | %4.1f %% | %s%n",
            from,
            by,
            100.0 * count(phrases, verifier, true) / phrases.clips,
            100.0 * count(phrases, verifier, false) / phrases.clips,
            talk.stream().map(one -> count(one, verifier, false)).toList());
      }
    }
  }

  /** With the limits in use, but for two of them. */
  private static UtteranceVerifier verifier(double contestedFrom, double betterBy) {
    return new UtteranceVerifier(
        new VerifierLimits(
            LIMITS.acceptedFrom(),
            contestedFrom,
            LIMITS.unsureFrom(),
            LIMITS.rivalWithin(),
            LIMITS.freeFrom(),
            LIMITS.freeFiller(),
            LIMITS.freeWords(),
            LIMITS.freeSeconds(),
            betterBy));
  }

  /** The utterances that are taken, and mean what was said, or do not. */
  private long count(Folder folder, UtteranceVerifier verifier, boolean right) {
    return folder.heard.stream()
        .filter(
            one -> {
              UtteranceVerifier.Decision decision =
                  verifier.decide(one.utterance, this::interpret, false);
              boolean taken =
                  decision.outcome() == Outcome.ACCEPTED || decision.outcome() == Outcome.COMMAND;
              return taken && decision.interpretation().meanings().equals(one.meant) == right;
            })
        .count();
  }

  private Interpretation interpret(List<String> words) {
    return interpreted.computeIfAbsent(words, hearing::interpret);
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
        each.stream().flatMap(one -> one.heard.stream()).toList(),
        each.stream().mapToDouble(Folder::seconds).sum(),
        files.size());
  }

  private Folder hear(Pcm sound, List<Meaning> meant) {
    List<Heard> heard =
        hearing.utterances(sound).stream().map(utterance -> new Heard(utterance, meant)).toList();
    return new Folder(heard, sound.seconds(), 1);
  }

  private List<Meaning> said(Path wav) {
    Path text = wav.resolveSibling(wav.getFileName().toString().replace(".wav", ".txt"));
    try {
      return hearing.means(Files.readString(text).strip());
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
        .map(VerifierFit::read)
        .toList();
  }

  private static List<Path> wavs(Path folder) throws IOException {
    try (Stream<Path> files = Files.list(folder)) {
      return files.filter(file -> file.toString().endsWith(".wav")).sorted().toList();
    }
  }
}
