package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import tiptoe.finding.Finding;
import tiptoe.finding.Outcome;
import tiptoe.finding.Source;
import tiptoe.language.tagger.NaturalSentences;
import tiptoe.protocol.Norm;
import tiptoe.protocol.Protocol;
import tiptoe.protocol.Step;
import tiptoe.session.UtteranceVerifier;

/**
 * Counts what becomes of sentences that are typed: recorded, offered or missed, and how much of it
 * is right. A line is a sentence, {@code =>}, and its statements as {@code step/side=value} or
 * {@code fact=value}, or {@code none}; a line without an arrow is talk.
 */
public final class SentenceBenchmark {
  private static final Protocol PROTOCOL = Protocol.standard();
  private static final ThreadMXBean CLOCK = ManagementFactory.getThreadMXBean();

  /** What became of the statements of a file. */
  static final class Count {
    int sentences;
    int statements;
    int recordedRight;
    int recordedWrong;
    int offeredRight;
    int offeredWrong;
    int turnedSides;
    int turnedDenials;
    int talk;
    int talkRecorded;
    int talkAsked;
    int talkCommanded;
    int talkOffered;
    double milliseconds;
    final List<String> notes = new ArrayList<>();

    int missed() {
      return statements - recordedRight - offeredRight;
    }

    @Override
    public String toString() {
      double all = Math.max(1, statements) / 100.0;
      return "%d sentences, %d statements: recorded %.1f %% (%d right, %d wrong), offered %.1f %% (%d right, %d wrong), missed %.1f %% (%d); sides turned %d, denials turned %d; talk %d: recorded %d, asked %d, commanded %d, offered %d; %.2f ms of processor time a sentence"
          .formatted(
              sentences,
              statements,
              recordedRight / all,
              recordedRight,
              recordedWrong,
              offeredRight / all,
              offeredRight,
              offeredWrong,
              missed() / all,
              missed(),
              turnedSides,
              turnedDenials,
              talk,
              talkRecorded,
              talkAsked,
              talkCommanded,
              talkOffered,
              milliseconds / Math.max(1, sentences + talk));
    }
  }

  private final Interpreter interpreter;
  private final TypedText typed;
  private final UtteranceVerifier verifier = UtteranceVerifier.standard();

  SentenceBenchmark(Interpreter interpreter, TypedText typed) {
    this.interpreter = interpreter;
    this.typed = typed;
  }

  static SentenceBenchmark shipped() throws IOException {
    return new SentenceBenchmark(
        new Interpreter(Shipped.network(), PROTOCOL, Shipped.tagger()), Shipped.typed());
  }

  /**
   * @param args files; {@code notes} lists what is not recorded right, {@code unbroken} reads
   *     without commas, as what is heard has none but for pauses
   */
  public static void main(String[] args) throws IOException {
    SentenceBenchmark benchmark = shipped();
    boolean notes = List.of(args).contains("notes");
    boolean unbroken = List.of(args).contains("unbroken");
    List<Path> files = new ArrayList<>();
    for (String arg : args) {
      if (!arg.equals("notes") && !arg.equals("unbroken")) {
        files.add(Path.of(arg));
      }
    }
    if (files.isEmpty()) {
      files.add(Path.of("../shared/natural/sentences.txt"));
      files.add(Path.of("../shared/natural/chat.txt"));
    }
    for (Path file : files) {
      if (Files.exists(file)) {
        List<String> lines = Files.readAllLines(file);
        if (unbroken) {
          lines = lines.stream().map(SentenceBenchmark::unbroken).toList();
        }
        benchmark.count(lines);
        Count count = benchmark.count(lines);
        System.out.println(file.getFileName() + ": " + count);
        if (notes) {
          count.notes.forEach(System.out::println);
        }
      } else {
        System.out.println("skipped, not there: " + file);
      }
    }
  }

  Count count(List<String> lines) {
    Count count = new Count();
    for (String line : lines) {
      if (line.isBlank() || line.startsWith("#")) {
        continue;
      }
      String[] sides = line.split("=>");
      String wanted = sides.length == 1 ? "none" : sides[1].strip();
      Set<String> expected = new TreeSet<>();
      if (!wanted.equals("none")) {
        List.of(wanted.split(";")).forEach(item -> expected.add(item.strip()));
      }
      read(sides[0].strip(), expected, count);
    }
    return count;
  }

  /** Holds that all of a row is recorded, and nothing else recorded or offered. */
  void assertRecorded(String row) {
    Count count = count(List.of(row));
    assertEquals(0, count.recordedWrong + count.offeredWrong, count.notes::toString);
    assertEquals(0, count.talkRecorded, count.notes::toString);
    assertEquals(count.statements, count.recordedRight, count.notes::toString);
  }

  /** Holds that nothing of a text is recorded or asked. */
  void assertNothingRecorded(String text) {
    Count count = count(List.of(text));
    assertEquals(0, count.talkRecorded + count.talkAsked, count.notes::toString);
  }

  /** The line without the commas of its sentence. */
  static String unbroken(String line) {
    String[] sides = line.split("=>", 2);
    return sides[0].replace(",", "") + (sides.length == 1 ? "" : "=>" + sides[1]);
  }

  /** What is recorded of a text. */
  Set<String> recorded(String text) {
    return recorded(text, Dialogue.START);
  }

  /** The same in a dialogue. */
  Set<String> recorded(String text, Dialogue before) {
    Dialogue dialogue = before;
    Set<String> recorded = new TreeSet<>();
    for (String sentence : TypedText.sentences(text)) {
      Interpretation meaning =
          interpreter.interpret(typed.utterance(sentence), dialogue, Source.GRAMMAR);
      dialogue = meaning.dialogue();
      Interpretation counts = meaning.isParted() ? meaning.certain() : meaning;
      if (verifier.decide(counts, false).outcome() == Outcome.ACCEPTED) {
        counts.statements().forEach(finding -> recorded.add(key(finding)));
      }
    }
    return recorded;
  }

  /** Whether something recorded is a normal finding. */
  boolean isNormal(String recorded) {
    String[] parts = recorded.split("=", 2);
    Step step = PROTOCOL.step(parts[0].replaceAll("/.*", ""));
    return !step.isMeasured() && isNormal(step, parts[1]);
  }

  private void read(String text, Set<String> expected, Count count) {
    long start = CLOCK.getCurrentThreadCpuTime();
    Dialogue dialogue = Dialogue.START;
    Set<String> recorded = new TreeSet<>();
    Set<String> offered = new TreeSet<>();
    boolean asked = false;
    boolean commanded = false;
    List<String> uncovered = new ArrayList<>();
    for (String sentence : TypedText.sentences(text)) {
      Interpretation meaning =
          interpreter.interpret(typed.utterance(sentence), dialogue, Source.GRAMMAR);
      dialogue = meaning.dialogue();
      List<Interpretation> parts =
          meaning.isParted() ? List.of(meaning.certain(), meaning.doubtful()) : List.of(meaning);
      for (Interpretation part : parts) {
        Outcome outcome = verifier.decide(part, false).outcome();
        asked |= outcome != Outcome.IGNORED && !part.questions().isEmpty();
        commanded |=
            outcome == Outcome.COMMAND
                || outcome == Outcome.ACCEPTED
                    && part.of(Meaning.Instruction.class).findAny().isPresent();
        part.of(Meaning.Fact.class)
            .forEach(
                fact -> {
                  if (outcome == Outcome.UNSURE || outcome == Outcome.ACCEPTED && fact.doubtful()) {
                    offered.add(fact.id() + "=" + fact.value());
                  } else if (outcome == Outcome.ACCEPTED) {
                    if (fact.correction()) {
                      recorded.removeIf(key -> key.startsWith(fact.id() + "="));
                    }
                    recorded.add(fact.id() + "=" + fact.value());
                  }
                });
        for (Finding finding : part.statements()) {
          if (deniesBeside(finding, part.statements())) {
            continue;
          }
          if (outcome == Outcome.ACCEPTED) {
            recorded.add(key(finding));
          } else if (outcome == Outcome.UNSURE) {
            offered.add(key(finding));
          }
        }
      }
      uncovered.addAll(meaning.uncovered());
    }
    count.milliseconds += (CLOCK.getCurrentThreadCpuTime() - start) / 1e6;
    if (expected.isEmpty()) {
      count.talk++;
      count.talkRecorded += recorded.isEmpty() ? 0 : 1;
      count.talkAsked += asked ? 1 : 0;
      count.talkCommanded += commanded ? 1 : 0;
      count.talkOffered += offered.isEmpty() ? 0 : 1;
      if (asked || commanded || !recorded.isEmpty() || !offered.isEmpty()) {
        count.notes.add(
            "TALK recorded %s offered %s asked %s commanded %s: %s"
                .formatted(recorded, offered, asked, commanded, text));
      }
      return;
    }
    count.sentences++;
    count.statements += expected.size();
    List<String> wrong = new ArrayList<>();
    for (String found : recorded) {
      if (isExpected(found, expected)) {
        count.recordedRight++;
      } else {
        count.recordedWrong++;
        wrong.add("RECORDED WRONG " + found);
        classify(found, expected, count);
      }
    }
    for (String found : offered) {
      if (isExpected(found, expected)) {
        count.offeredRight++;
      } else {
        count.offeredWrong++;
        wrong.add("OFFERED WRONG " + found);
        classify(found, expected, count);
      }
    }
    List<String> missed =
        expected.stream()
            .filter(want -> recorded.stream().noneMatch(found -> same(found, want)))
            .filter(want -> offered.stream().noneMatch(found -> same(found, want)))
            .toList();
    if (!wrong.isEmpty() || !missed.isEmpty() || !offered.isEmpty()) {
      count.notes.add(
          "%s missed %s offered %s recorded %s uncovered %s\n     in: %s"
              .formatted(wrong, missed, offered, recorded, uncovered, text));
    }
  }

  // "Caput, no cephalohaematoma": the second denies and says no more than the first.
  private static boolean deniesBeside(Finding denial, List<Finding> all) {
    return !denial.denied().isEmpty()
        && all.stream()
            .filter(other -> other.step().equals(denial.step()) && other.side() == denial.side())
            .anyMatch(other -> !isNormal(PROTOCOL.step(other.step()), other.value()));
  }

  private static boolean isExpected(String found, Set<String> expected) {
    return expected.stream().anyMatch(want -> same(found, want));
  }

  /** Whether two things recorded are the same, the side aside where a step has none. */
  boolean isSame(String one, String other) {
    return same(one, other);
  }

  private static boolean same(String found, String want) {
    String[] one = found.split("=", 2);
    String[] other = want.split("=", 2);
    return placed(one[0]).equals(placed(other[0]))
        && NaturalSentences.same(
            one[1].replaceFirst("^num:", ""), other[1].replaceFirst("^num:", ""));
  }

  // A side that a table gives to a step that has none is not compared.
  private static String placed(String key) {
    String step = key.replaceAll("/.*", "");
    return PROTOCOL.find(step).filter(Step::sided).isPresent() ? key : step;
  }

  private static String key(Finding finding) {
    return finding.step()
        + (finding.side() == null ? "" : "/" + finding.side().id())
        + "="
        + (finding.quantity() == null ? finding.value() : "num:" + finding.quantity().text());
  }

  private static void classify(String found, Set<String> expected, Count count) {
    String[] one = found.split("=", 2);
    String stepId = one[0].replaceAll("/.*", "");
    if (PROTOCOL.find(stepId).isEmpty()) {
      return;
    }
    Step step = PROTOCOL.step(stepId);
    for (String want : expected) {
      String[] other = want.split("=", 2);
      if (!other[0].replaceAll("/.*", "").equals(stepId) || step.isMeasured()) {
        continue;
      }
      if (placed(one[0]).equals(placed(other[0]))) {
        count.turnedDenials += isNormal(step, one[1]) != isNormal(step, other[1]) ? 1 : 0;
      } else if (one[1].equals(other[1])) {
        count.turnedSides++;
        return;
      }
    }
  }

  private static boolean isNormal(Step step, String value) {
    return step.value(value).map(v -> v.norm() == Norm.NORMAL).orElse(false);
  }
}
