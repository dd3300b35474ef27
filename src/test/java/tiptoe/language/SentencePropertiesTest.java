package tiptoe.language;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tiptoe.TestExtent;
import tiptoe.finding.FindingNotation;
import tiptoe.finding.Question;

/**
 * Sentences that are recorded at once, changed so that they mean something else: then something
 * else is recorded, or nothing. What a sentence is about is left as it is, so that no table of
 * answers is needed.
 */
class SentencePropertiesTest extends Recording {
  private static final Path FOLDER = Path.of("src/test/resources/tiptoe/language/natural/typed");
  private static final Set<String> NOT_A_SIDE =
      Set.of(
          "right then",
          "right so",
          "right okay",
          "right,",
          "all right",
          "right down",
          "right at",
          "right out",
          "right back",
          "right round",
          "right over",
          "right to",
          "right on",
          "that's right",
          "right the",
          "just right",
          "right place",
          "right up",
          "right angle",
          "right height");

  private static List<String> recorded;
  private static List<String> simple;

  @BeforeAll
  static void read() throws IOException {
    List<String> all = new ArrayList<>();
    try (Stream<Path> files = Files.list(FOLDER)) {
      for (Path file : files.sorted().toList()) {
        Files.readAllLines(file).stream()
            .filter(line -> line.contains("=>"))
            .map(line -> line.split("=>")[0].strip())
            .forEach(all::add);
      }
    }
    recorded =
        TestExtent.some(all, 6).stream()
            .filter(text -> !benchmark.recorded(text).isEmpty())
            .toList();
    simple = recorded.stream().filter(text -> !text.matches(".*[,.:()–—-].*")).toList();
    assertTrue(recorded.size() > TestExtent.of(33, 200), () -> recorded.size() + " recorded");
    assertTrue(simple.size() > TestExtent.of(6, 40), () -> simple.size() + " short");
  }

  private static void assertNothingIsRecorded(List<String> texts) {
    List<String> wrong =
        texts.stream()
            .filter(text -> !benchmark.recorded(text).isEmpty())
            .map(text -> text + " => " + benchmark.recorded(text))
            .toList();
    assertEquals(List.of(), wrong);
  }

  @Test
  void theOtherSideIsTheOtherSide() {
    List<String> wrong = new ArrayList<>();
    for (String text : recorded) {
      boolean sided = text.matches(".*\\b(left|right)\\b.*");
      if (!sided || NOT_A_SIDE.stream().anyMatch(text::contains)) {
        continue;
      }
      Set<String> before = benchmark.recorded(text);
      Set<String> after = benchmark.recorded(swapped(text));
      Set<String> mirrored =
          before.stream()
              .map(SentencePropertiesTest::swapped)
              .collect(Collectors.toCollection(TreeSet::new));
      if (!mirrored.containsAll(after)) {
        wrong.add(text + " => " + before + " but " + after);
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** What is asked of something else takes nothing from what is said in full. */
  @ParameterizedTest
  @ValueSource(strings = {"palate intact/palpated", "scalp cephalohaematoma/side"})
  void anOpenQuestionTakesNothingFromASentence(String asked) {
    String[] parts = asked.split("/");
    Question question = Question.detail(FindingNotation.parse(parts[0]), parts[1]);
    Dialogue asking = new Dialogue("hips", List.of(), question);
    Dialogue plain = new Dialogue("hips", List.of(), null);
    List<String> wrong = new ArrayList<>();
    for (String text : recorded) {
      Set<String> before = benchmark.recorded(text, plain);
      Set<String> after = benchmark.recorded(text, asking);
      if (!after.equals(before)) {
        wrong.add(text + " => " + before + " but " + after);
      }
    }
    assertEquals(List.of(), wrong);
  }

  private static String swapped(String text) {
    return text.replaceAll("\\bleft\\b", "@")
        .replaceAll("\\bright\\b(?!-hand)", "left")
        .replaceAll("@", "right");
  }

  @Test
  void aQuestionRecordsNothing() {
    assertNothingIsRecorded(recorded.stream().map(text -> text + "?").toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "maybe %s",
        "possibly %s",
        "i think %s",
        "%s i think",
        "query %s",
        "not sure if %s",
        "%s perhaps",
        "i wonder whether %s",
        "it looks as if %s",
        "hopefully %s"
      })
  void aDoubtRecordsNothing(String pattern) {
    assertNothingIsRecorded(simple.stream().map(pattern::formatted).toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "his brother had %s",
        "mum said %s",
        "in the last baby %s",
        "the other twin has %s",
        "my cousin's baby had %s"
      })
  void anotherPersonRecordsNothing(String pattern) {
    assertNothingIsRecorded(recorded.stream().map(pattern::formatted).toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "yesterday %s",
        "last week %s",
        "previously %s",
        "%s at the last check",
        "it used to be that %s"
      })
  void thePastRecordsNothing(String pattern) {
    assertNothingIsRecorded(simple.stream().map(pattern::formatted).toList());
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "we should check whether %s",
        "i'll see tomorrow if %s",
        "make sure %s",
        "watch for %s",
        "tell me if %s",
        "if %s we will refer"
      })
  void aPlanRecordsNothing(String pattern) {
    assertNothingIsRecorded(simple.stream().map(pattern::formatted).toList());
  }

  /** What is not normal stays what it is with a word that nobody knows; what is normal may not. */
  @Test
  void anUnknownWordAmongItsWordsRecordsNothingElseAndNothingNormal() {
    List<String> wrong = new ArrayList<>();
    for (String text : simple) {
      Set<String> before = benchmark.recorded(text);
      String[] words = text.split(" ");
      for (int at = 0; at <= words.length && !text.contains(" but "); at++) {
        // "Without flobbery" denies a thing of its own, "at this flobbery stage" tells when.
        String start = String.join(" ", List.of(words).subList(0, at));
        if (start.matches(".*\\b(no|without|nil|(in|at|on|over|under)( the| a| this)?)")) {
          continue;
        }
        List<String> more = new ArrayList<>(List.of(words));
        more.add(at, "flobbery");
        String changed = String.join(" ", more);
        Set<String> after = benchmark.recorded(changed);
        boolean same =
            after.stream()
                .allMatch(one -> before.stream().anyMatch(said -> benchmark.isSame(one, said)));
        if (!same || after.stream().anyMatch(benchmark::isNormal)) {
          wrong.add(changed + " => " + after);
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  /** Whatever stands between: what another of its kind follows is not recorded. */
  @ParameterizedTest
  @MethodSource
  void whatAnotherFollowsIsNotRecorded(String said, String another, List<String> between) {
    Set<String> first = benchmark.recorded(said);
    assertEquals(1, first.size(), said);
    List<String> wrong =
        between.stream()
            .map(pattern -> said + ", " + pattern.formatted(another))
            .filter(changed -> benchmark.recorded(changed).containsAll(first))
            .toList();
    assertEquals(List.of(), wrong);
  }

  static Stream<Arguments> whatAnotherFollowsIsNotRecorded() {
    Stream<String> numbers =
        Stream.of(
            "head circumference thirty six/thirty five and a half",
            "head circumference thirty six centimetres/thirty five centimetres",
            "weight three two five zero grams/two three five zero grams",
            "temperature thirty seven point nine/thirty seven point two",
            "serum bilirubin one hundred and sixty eight/one hundred and eighty six",
            "heart rate one hundred and fifty/one hundred and thirty",
            "respiratory rate sixty eight/forty eight",
            "length fifty one centimetres/fifty two");
    Stream<String> sides =
        Stream.of(
                "hydrocele on the right",
                "club foot on the right",
                "crackles at the right base",
                "sticky discharge from the right eye",
                "crepitus over the right clavicle",
                "white reflex on the right",
                "right femoral weak",
                "extra digit on the right hand",
                "right nostril patent",
                "right clavicle intact")
            .flatMap(
                said ->
                    Stream.of("left", "the left", "on the left", "the left one", "left side")
                        .map(other -> said + "/" + other));
    Stream<String> findings =
        Stream.of(
            "left femoral absent/left femoral strong",
            "left femoral weak/strong",
            "anterior fontanelle tense/soft and flat",
            "liver enlarged/liver not enlarged",
            "cleft palate/palate intact",
            "murmur present/no murmur",
            "barlow positive on the left/barlow negative on the left",
            "club foot on the left/club foot on the right",
            "brachial pulse weak on the right/weak on the left");
    return Stream.of(
            followed(
                numbers,
                "tape slipped, do it again, %s",
                "digits swapped, %s",
                "i misread it, %s",
                "no, %s",
                "no, wait, %s",
                "hang on, %s",
                "oh bother, %s",
                "flobbery, %s",
                "gronk the flobbery, %s",
                "let me look again, %s",
                "he's kicking, %s",
                "sorry poppet, %s",
                "apologies, %s"),
            followed(
                sides,
                "i misspoke, %s",
                "wrong side, %s",
                "my error, %s",
                "apologies, %s",
                "hang on, i'm facing the wrong way, %s",
                "strike that, %s",
                "no, %s",
                "no, wait, %s",
                "rather, %s",
                "sorry, %s",
                "flobbery, %s",
                "oh flobbery gronk, %s",
                "flobbery %s",
                "%s flobbery"),
            followed(
                findings,
                "my error, %s",
                "premature, %s",
                "amend that, %s",
                "no, %s",
                "flobbery, %s",
                "gronk the flobbery, %s"))
        .flatMap(all -> all);
  }

  private static Stream<Arguments> followed(Stream<String> pairs, String... between) {
    return pairs.map(
        pair -> Arguments.of(pair.split("/")[0], pair.split("/")[1], List.of(between)));
  }

  @Test
  void aDenialTakesBackWhatItDenies() {
    List<String> wrong = new ArrayList<>();
    for (String text : recorded) {
      Set<String> before = benchmark.recorded(text);
      // Behind a turn, in what is only thought or in a remark, the denial is of something else.
      if (before.size() != 1
          || text.contains(" but ")
          || text.contains(", looks worse than it is")
          || text.contains(", just ")
          || text.contains(" i think ")) {
        continue;
      }
      for (String verb : List.of("is", "are", "feels", "looks")) {
        String denied = text.replaceFirst(" " + verb + " (?!not)", " " + verb + " not ");
        if (!denied.equals(text)
            && benchmark.recorded(denied).stream().anyMatch(before::contains)) {
          wrong.add(denied + " => " + benchmark.recorded(denied));
        }
      }
      for (String behind :
          List.of(", no", ", not", ", no it isn't", ", not really", ", scratch that")) {
        String denied = text + behind;
        if (benchmark.recorded(denied).stream().anyMatch(before::contains)) {
          wrong.add(denied + " => " + benchmark.recorded(denied));
        }
      }
    }
    assertEquals(List.of(), wrong);
  }

  @Test
  void whatIsTakenForUneasyIsNotRecordedAsNormal() {
    List<String> wrong = new ArrayList<>();
    for (String text : recorded) {
      String uneasy = text + ", i'm not happy with it";
      if (benchmark.recorded(uneasy).stream().anyMatch(benchmark::isNormal)) {
        wrong.add(uneasy + " => " + benchmark.recorded(uneasy));
      }
    }
    assertEquals(List.of(), wrong);
  }
}
