package tiptoe.session;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.audio.AudioFile;
import tiptoe.audio.Chunk;
import tiptoe.audio.Pcm;
import tiptoe.audio.SampleSource;
import tiptoe.exam.Answer;
import tiptoe.exam.Asked;
import tiptoe.exam.ExamRecord;
import tiptoe.exam.Offer;
import tiptoe.exam.Phase;
import tiptoe.finding.Finding;
import tiptoe.finding.Question;
import tiptoe.grammar.PhraseNetwork;
import tiptoe.language.Interpretation;
import tiptoe.language.Meaning;
import tiptoe.settings.Settings;

/**
 * An examination as it is lived: a voice says each sentence of a file, waits for what became of it,
 * answers what is asked and what is read out together as somebody would who knows what was meant,
 * and goes on where something waits. What was lost is said once more, in one breath, in words that
 * {@code say} lists; what is recorded and was not meant is put right or crossed out at once. Prints
 * what was recorded at once, what after more words, what not at all, what stands that nobody meant,
 * and how many more words it took.
 *
 * <pre>
 * LiveSession FILE COMMAND…      such as  flite -voice slt -t {text} -o {wav}
 * </pre>
 */
final class LiveSession implements SampleSource {
  /** So long a speaker waits for an answer, in s. */
  private static final double WAIT = 2.2;

  private static final int CHUNK = Pcm.RATE / 5;
  private static final int MOST_EXTRA = 8;
  private static final List<String> PLACES = List.of("first", "second", "third", "fourth", "fifth");

  /** A finding that was meant; both sides are one. */
  private record Meant(String text, Set<String> keys) {
    static Meant of(String text) {
      String[] parts = text.strip().split("=");
      String[] place = parts[0].split("\\.");
      Set<String> keys = new LinkedHashSet<>();
      if (place.length == 1) {
        keys.add(place[0] + "=" + parts[1]);
      } else {
        for (String side : place[1].equals("both") ? List.of("right", "left") : List.of(place[1])) {
          keys.add(place[0] + "." + side + "=" + parts[1]);
        }
      }
      return new Meant(text.strip(), keys);
    }
  }

  private final Deque<String> sentences = new ArrayDeque<>();
  private final Map<String, List<Meant>> meanings = new HashMap<>();
  private final Set<String> allMeant = new HashSet<>();
  private final List<String> command;
  private final Map<String, String> wordings = new HashMap<>();
  private final ExamSession session;

  private List<Meant> open = List.of();

  /** What was said, does not stand, and is not spoken of again before it is read out. */
  private final List<Meant> waiting = new ArrayList<>();

  private final Set<String> repeated = new HashSet<>();

  /** What was recorded and not meant, and could not be put right. */
  private final Set<String> leftWrong = new HashSet<>();

  /** What was recorded at once and not crossed out since. */
  private final Set<String> once = new HashSet<>();

  private String said;
  private boolean first;
  private int extraHere;
  private int utterancesBefore;
  private int told;
  private Pcm sound = Pcm.silence(1);
  private int at;
  private long position;

  private int findings;
  private int extra;

  private LiveSession(Understanding understanding, Path file, List<String> command)
      throws IOException {
    this.command = command;
    session = Sessions.inMemory(understanding, Settings.DEFAULT);
    for (String line : Files.readAllLines(file)) {
      if (!line.startsWith("#") && !line.isBlank()) {
        String[] parts = line.split("\\|");
        List<Meant> meant = new ArrayList<>();
        for (String one : parts[1].split(";")) {
          meant.add(Meant.of(one));
        }
        sentences.add(parts[0].strip());
        meanings.put(parts[0].strip(), meant);
        meant.forEach(one -> allMeant.addAll(one.keys()));
        findings += meant.size();
      }
    }
    learn(understanding.network());
  }

  /** The shortest wording of each finding, and of each fact that is no number. */
  private void learn(PhraseNetwork network) {
    for (PhraseNetwork.Path path : network.paths(new Random(1), 20_000)) {
      Interpretation meaning = session.meaning(path.words());
      List<Finding> statements = meaning.statements();
      boolean one =
          !statements.isEmpty()
              && meaning.meanings().size() == statements.size()
              && statements.stream().noneMatch(Finding::group)
              && statements.stream().map(Finding::step).distinct().count() == 1;
      boolean fact =
          meaning.meanings().size() == 1 && meaning.meanings().get(0) instanceof Meaning.Fact;
      if ((one || fact) && meaning.uncovered().isEmpty()) {
        Set<String> keys = new TreeSet<>(Comparator.reverseOrder());
        meaning.meanings().forEach(said -> keys.addAll(keys(said)));
        String words = String.join(" ", path.words());
        wordings.merge(String.join(",", keys), words, (a, b) -> a.length() <= b.length() ? a : b);
      }
    }
  }

  /** The shortest wording; of one side as it is said of the other where that was found alone. */
  private Optional<String> wording(String keys) {
    Optional<String> across =
        Optional.ofNullable(wordings.get(swapped(keys, ".right", ".left")))
            .map(words -> swapped(words, "right", "left"));
    return Optional.ofNullable(wordings.get(keys)).or(() -> across);
  }

  private static String swapped(String text, String one, String other) {
    return text.replace(one, "\0").replace(other, one).replace("\0", other);
  }

  private static String key(Finding finding) {
    Object value =
        finding.quantity() == null
            ? finding.value()
            : finding.quantity().text().replaceFirst("\\.0$", "");
    String side = finding.side() == null ? "" : "." + finding.side().id();
    return finding.step() + side + "=" + value;
  }

  private static String key(String fact, Object value) {
    return fact + "=" + value.toString().replaceFirst("\\.0$", "");
  }

  private static List<String> keys(Meaning said) {
    return said instanceof Meaning.Fact fact
        ? List.of(key(fact.id(), fact.value()))
        : said.findings().stream().map(LiveSession::key).toList();
  }

  private Set<String> standing() {
    Set<String> keys = new HashSet<>();
    for (Answer answer : session.record().answers()) {
      keys.add(key(answer.finding()));
    }
    session.record().baby().facts().forEach((fact, value) -> keys.add(key(fact, value)));
    return keys;
  }

  // What the speaker does next

  private Optional<String> next(ExamRecord record) {
    settle(record);
    if (said != null && extraHere > 0) {
      record.utterances().stream()
          .skip(told)
          .forEach(
              one ->
                  System.out.println(
                      "      " + one.heard().outcome() + " \"" + one.heard().text() + "\""));
    }
    told = record.utterances().size();
    if (said != null && extraHere < MOST_EXTRA) {
      Optional<String> answer = answer(record);
      if (answer.isPresent()) {
        System.out.println("    + " + answer.get());
        extra++;
        extraHere++;
        return answer;
      }
    }
    waiting.addAll(open);
    open = List.of();
    said = null;
    if (!sentences.isEmpty()) {
      said = sentences.poll();
      open = new ArrayList<>(meanings.get(said));
      repeated.clear();
      first = true;
      extraHere = 0;
      utterancesBefore = record.utterances().size();
      return Optional.of(said);
    }
    if (record.phase() == Phase.ENDED) {
      return Optional.empty();
    }
    Optional<String> waits = record.phase() == Phase.ENDING ? confirmed(record) : Optional.empty();
    if (waits.isPresent()) {
      System.out.println("    + " + waits.get());
      extra++;
    }
    return waits.or(() -> Optional.of("end of examination"));
  }

  /** What of the sentence is recorded by now. */
  private void settle(ExamRecord record) {
    Set<String> now = standing();
    waiting.removeIf(one -> now.containsAll(one.keys()));
    List<Meant> left = new ArrayList<>();
    for (Meant one : said == null ? List.<Meant>of() : meanings.get(said)) {
      if (!now.containsAll(one.keys())) {
        left.add(one);
      } else if (first) {
        once.addAll(one.keys());
      }
    }
    if (said != null && first) {
      List<String> heard = new ArrayList<>();
      record.utterances().stream()
          .skip(utterancesBefore)
          .forEach(one -> heard.add(one.heard().outcome() + " \"" + one.heard().text() + "\""));
      System.out.printf(
          "%s%n    %s  left: %s%n", said, heard, left.stream().map(Meant::text).toList());
    }
    first = false;
    open = left;
  }

  /** What is said beside the sentence itself; empty where nothing more is tried. */
  private Optional<String> answer(ExamRecord record) {
    Optional<String> right = putRight();
    if (right.isPresent()) {
      return right;
    }
    Optional<String> yes = confirmed(record);
    if (yes.isPresent()) {
      return yes;
    }
    if (offersWhatIsMeant(record) && extraHere > 0 && !hasHeardSince(record)) {
      return Optional.of("yes"); // an answer that was heard unsurely
    }
    Optional<Asked> asked = record.openQuestion().filter(one -> isOfThisSentence(one));
    if (asked.isPresent() && asked.get().question().kind() == Question.Kind.SIDE) {
      String step = asked.get().question().about().step();
      String value = "=" + asked.get().question().about().value();
      List<String> sides = new ArrayList<>();
      open.stream()
          .flatMap(one -> one.keys().stream())
          .filter(key -> key.startsWith(step + ".") && key.endsWith(value))
          .forEach(key -> sides.add(key.replaceFirst("^[^.]*\\.", "").replaceFirst("=.*", "")));
      if (!sides.isEmpty()) {
        return Optional.of(sides.size() > 1 ? "both" : sides.get(0));
      }
    }
    if (asked.isPresent() && asked.get().question().kind() == Question.Kind.FACT) {
      boolean meant = allMeant.contains(key(asked.get().fact(), asked.get().value()));
      return Optional.of(meant ? "yes" : "no");
    }
    if (asked.isPresent() && asked.get().question().kind() == Question.Kind.CONTRADICTION) {
      Question question = asked.get().question();
      if (question.about() != null && question.against() != null) {
        if (allMeant.contains(key(question.about()))) {
          return Optional.of("the second one");
        }
        if (allMeant.contains(key(question.against()))) {
          return Optional.of("the first one");
        }
      }
    }
    Set<String> offered = new HashSet<>();
    record.offers().forEach(part -> offered.addAll(keys(part.meaning())));
    List<String> lacking = new ArrayList<>();
    for (Meant one : open) {
      Set<String> missing = new TreeSet<>(Comparator.reverseOrder());
      missing.addAll(one.keys());
      missing.removeAll(standing());
      if (!offered.containsAll(missing) && repeated.add(one.text())) {
        lacking.add(wording(String.join(",", missing)).orElse(said));
      }
    }
    return lacking.isEmpty()
        ? Optional.empty()
        : Optional.of(String.join(", ", new LinkedHashSet<>(lacking)));
  }

  /** The screen and the voice tell at once what was recorded; what was not meant is noticed. */
  private Optional<String> putRight() {
    Set<String> wrong = new TreeSet<>(standing());
    wrong.removeAll(allMeant);
    wrong.removeAll(leftWrong);
    if (wrong.isEmpty()) {
      return Optional.empty();
    }
    if (extraHere >= MOST_EXTRA / 2) {
      leftWrong.addAll(wrong);
      return Optional.empty();
    }
    repeated.clear();
    String slot = wrong.iterator().next().replaceFirst("=.*", "=");
    Optional<String> instead =
        allMeant.stream().filter(key -> key.startsWith(slot)).findFirst().flatMap(this::wording);
    if (wrong.size() == 1 && instead.isPresent()) {
      return instead.map(words -> "correction, " + words);
    }
    meanings.get(said).forEach(one -> once.removeAll(one.keys()));
    return Optional.of("cross that out");
  }

  /** Whether something was heard behind what is offered: a yes would not be taken for an answer. */
  private static boolean hasHeardSince(ExamRecord record) {
    return record.toConfirm().stream()
        .flatMap(offer -> offer.utterances().stream())
        .anyMatch(
            offered ->
                record.utterances().stream()
                    .anyMatch(
                        one -> one.number() > offered.number() && !one.heard().text().isBlank()));
  }

  private boolean offersWhatIsMeant(ExamRecord record) {
    return record
        .toConfirm()
        .filter(offer -> offer.way() == Offer.Way.ALONE)
        .filter(
            offer ->
                offer.parts().stream()
                    .flatMap(part -> keys(part.meaning()).stream())
                    .allMatch(allMeant::contains))
        .isPresent();
  }

  private boolean isOfThisSentence(Asked asked) {
    return asked.utterance() != null && asked.utterance() > utterancesBefore;
  }

  /**
   * The answer to what is read out together; empty where nothing is, or more is wrong than right.
   */
  private Optional<String> confirmed(ExamRecord record) {
    Offer offer = record.toConfirm().orElse(null);
    if (offer == null || offer.way() == Offer.Way.ALONE) {
      return Optional.empty();
    }
    List<String> right = new ArrayList<>();
    List<String> wrong = new ArrayList<>();
    for (int at = 0; at < offer.places().size(); at++) {
      boolean meant =
          offer.places().get(at).stream()
              .flatMap(part -> keys(part.meaning()).stream())
              .anyMatch(allMeant::contains);
      (meant ? right : wrong).add(PLACES.get(at));
    }
    if (right.isEmpty()) {
      return offer.way() == Offer.Way.AT_END ? Optional.empty() : Optional.of("no");
    }
    return Optional.of(
        wrong.isEmpty()
            ? "yes to all"
            : wrong.size() < 3
                ? "not the " + String.join(" or the ", wrong)
                : "only the " + String.join(" and the ", right));
  }

  // The sound of it

  @Override
  public Optional<Chunk> next() throws IOException {
    if (at >= sound.samples().length) {
      Optional<String> words = next(session.record());
      if (words.isEmpty()) {
        return Optional.empty();
      }
      sound = Pcm.join(spoken(words.get()), Pcm.silence(WAIT));
      at = 0;
    }
    int to = Math.min(sound.samples().length, at + CHUNK);
    Chunk chunk = new Chunk(position, 0, Arrays.copyOfRange(sound.samples(), at, to));
    position += to - at;
    at = to;
    return Optional.of(chunk);
  }

  private Pcm spoken(String text) throws IOException {
    Path wav = Files.createTempFile("said", ".wav");
    try {
      List<String> filled =
          command.stream()
              .map(part -> part.replace("{text}", text).replace("{wav}", wav.toString()))
              .toList();
      int code = new ProcessBuilder(filled).inheritIO().start().waitFor();
      if (code != 0) {
        throw new IOException("expected a voice, found exit code " + code + " of " + filled);
      }
      return AudioFile.read(wav);
    } catch (InterruptedException e) {
      throw new IOException(e);
    } finally {
      Files.delete(wav);
    }
  }

  @Override
  public void end() {}

  @Override
  public void close() {}

  private void print() {
    Set<String> wrong = new TreeSet<>(standing());
    wrong.removeAll(allMeant);
    System.out.println("\nlost:");
    waiting.forEach(one -> System.out.println("  " + one.text()));
    System.out.println("stands though nobody meant it:");
    wrong.forEach(one -> System.out.println("  " + one));
    List<Meant> all = meanings.values().stream().flatMap(List::stream).toList();
    long atOnce = all.stream().filter(one -> once.containsAll(one.keys())).count();
    long later = all.stream().filter(one -> standing().containsAll(one.keys())).count() - atOnce;
    System.out.printf(
        "findings %d, recorded at once %d, after more words %d, lost %d, wrong at the end %d;"
            + " more words %d times, %.2f a finding%n",
        findings, atOnce, later, waiting.size(), wrong.size(), extra, (double) extra / findings);
  }

  /** Prints all. */
  public static void main(String[] args) throws IOException {
    Understanding understanding = Understanding.load(Home.locate());
    understanding.getReady(System.err);
    LiveSession live =
        new LiveSession(understanding, Path.of(args[0]), List.of(args).subList(1, args.length));
    try (Engine engine =
        Engine.open(Home.locate(), understanding, null, Settings.DEFAULT, System.err)) {
      new Dictation(engine, live.session).listen(live, 0, changes -> {});
    }
    live.print();
    System.exit(0);
  }
}
