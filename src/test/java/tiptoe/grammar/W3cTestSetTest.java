package tiptoe.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestFactory;

/**
 * The ABNF grammars of the W3C test set for SRGS 1.0 (implementation report of 17 October 2002):
 * each carries inputs ({@code meta 'in.N'}) and their expected parse, or REJECT ({@code 'out.N'}).
 */
class W3cTestSetTest {
  private static final Path FOLDER = Path.of("../shared/reference/srgs-abnf-tests");
  private static final String REACH = "a rule that the root uses";

  /** Grammars that are right by the Recommendation and refused here, with the reason. */
  private static final Map<String, String> REFUSED = new TreeMap<>();

  private static void refused(String reason, String... files) {
    for (String file : files) {
      REFUSED.put(file, reason);
    }
  }

  static {
    refused(
        "mode voice",
        "dtmf-full.gram",
        "dtmf-pound-and-star.gram",
        "dtmf-pound-star-text.gram",
        "dtmf-sequence.gram",
        "dtmf-simple.gram",
        "language-dtmf-ignore.gram",
        "mode-dtmf.gram");
    refused("rules without recursion", "recursion.gram");
    refused(
        "words or rules, since filler is added by the decoder",
        "repeat-0-times.gram",
        "special-garbage.gram",
        "tag-many.gram");
    // a grammar to start from must say where
    refused(
        "a root declaration",
        "common.gram",
        "english_names.gram",
        "polite.gram",
        "politeness.gram",
        "root-rule-decl-missing.gram",
        "uri-ref-undefined-root-referenced.gram");
    // these refer to files that the test set leaves out, or that are no ABNF
    refused(
        "a grammar file in the grammar folder",
        "base-declaration.gram",
        "base-metabase.gram",
        "conformance-6.gram",
        "lang-ruleref.gram",
        "metabase-declaration.gram");
    // holds a Latin-1 copyright sign and names no encoding, which then is UTF-8
    refused("UTF-8 text", "meta.gram");
    // these hold rules that nothing uses; read all the same in the tests below
    refused(
        REACH,
        "conformance-3.gram",
        "conformance-4.gram",
        "example-2-booking.gram",
        "rule-private.gram",
        "ruleref-ext-private-root.gram",
        "ruleref-ext-rule.gram",
        "ruleref-ext-rule-mediatype.gram");
  }

  private static List<String> files() throws IOException {
    assumeTrue(Files.isDirectory(FOLDER), "the W3C test grammars are not at " + FOLDER);
    try (Stream<Path> files = Files.list(FOLDER)) {
      return files.map(file -> file.getFileName().toString()).sorted().toList();
    }
  }

  /** A slip of the test set: one spoken "multiple" is expected to be read as two. */
  private static final Example SLIP =
      new Example("but multiple", "$main[\"but\",$goodrule[\"multiple\",\"multiple\"]]");

  private record Example(String input, String output) {
    boolean isRejected() {
      return output.equals("REJECT");
    }
  }

  private static List<Example> cases(Map<String, String> meta) {
    List<Example> cases = new ArrayList<>();
    for (int i = 1; meta.containsKey("in." + i); i++) {
      cases.add(new Example(meta.get("in." + i), meta.get("out." + i)));
    }
    return cases;
  }

  @Test
  void refusesExactlyTheGrammarsListedHere() throws IOException {
    Map<String, String> refused = new TreeMap<>();
    for (String file : files()) {
      GrammarSet set = GrammarSet.load(FOLDER, file);
      if (!isWrong(set, file) && !set.problems().isEmpty()) {
        refused.put(file, set.problems().get(0).expectation());
      }
    }
    assertEquals(REFUSED, refused);
  }

  /** Whether the test set holds the grammar itself to be wrong: it accepts nothing. */
  private static boolean isWrong(GrammarSet set, String file) {
    List<Example> cases = cases(set.grammars().get(file).header().meta());
    try {
      // where the header is what is wrong, its inputs are not read
      return cases.isEmpty()
          ? Files.readString(FOLDER.resolve(file), StandardCharsets.ISO_8859_1).contains("'REJECT'")
          : cases.stream().allMatch(Example::isRejected);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @TestFactory
  Stream<DynamicTest> parsesAsTheTestSetSays() throws IOException {
    return files().stream().map(file -> DynamicTest.dynamicTest(file, () -> check(file)));
  }

  private static void check(String file) {
    GrammarSet set = GrammarSet.load(FOLDER, file);
    TreeSet<String> expectations = new TreeSet<>();
    set.problems().forEach(problem -> expectations.add(problem.expectation()));
    expectations.remove(REACH);
    Map<String, String> meta = set.grammars().get(file).header().meta();
    if (!expectations.isEmpty()) {
      assertTrue(REFUSED.containsKey(file) || isWrong(set, file), set.problems()::toString);
      return;
    }
    PhraseNetwork network = NetworkBuilder.build(set, set.root().orElseThrow());
    WordAutomaton automaton = network.automaton();
    String root = "$" + set.root().orElseThrow().rule().name();
    for (Example test : cases(meta)) {
      // other rules than the root are activated in some cases, which is not ours to do
      boolean ofRoot = test.isRejected() || test.output.startsWith(root + "[");
      if (ofRoot && !test.equals(SLIP)) {
        check(test, network, automaton);
      }
    }
  }

  private static void check(Example test, PhraseNetwork network, WordAutomaton automaton) {
    List<String> words = Grammars.words(test.input.toLowerCase(Locale.ROOT));
    Parse parse = network.parse(words);
    boolean accepted = parse.uncovered().isEmpty() && parse.phrases().size() == 1;
    assertEquals(Float.isFinite(automaton.cost(words)), accepted);
    if (test.isRejected()) {
      assertFalse(accepted, test.input);
    } else {
      assertEquals("(" + expected(test.output) + ")", Grammars.shown(parse, words));
    }
  }

  /** Tokens and tags of an expected parse, without the rule names. */
  private static String expected(String output) {
    Matcher parts = Pattern.compile("\\{!\\{(.*?)}!}|\"(.*?)\"").matcher(output);
    List<String> shown = new ArrayList<>();
    while (parts.find()) {
      shown.add(
          parts.group(1) != null
              ? "{" + parts.group(1).strip() + "}"
              : parts.group(2).toLowerCase(Locale.ROOT));
    }
    return String.join(" ", shown);
  }
}
