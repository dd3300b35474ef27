package tiptoe.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a person who writes grammars is told, word for word. */
class GrammarProblemsTest {
  private static final String HEAD = "#ABNF 1.0;\nlanguage en; root $a;\n";

  private static String problems(String text) {
    return problems(Map.of("a.gram", text));
  }

  private static String problems(Map<String, String> texts) {
    List<Problem> problems = GrammarSet.of(texts, "a.gram").problems();
    return String.join("\n", problems.stream().map(Problem::toString).toList());
  }

  @ParameterizedTest
  @CsvSource(
      delimiterString = "=>",
      quoteCharacter = '`',
      value = {
        "`$a = ;`                => 3:6: expected a word, a rule or a tag, found ';'",
        "`$a = b |;`             => 3:9: expected a word, a rule or a tag, found ';'",
        "`$a = b c`              => 3:9: expected a word, a rule, a tag, '|' or ';', found the end of file",
        "`$a = (b c;`            => 3:10: expected ')', found ';'",
        "`$a = b);`              => 3:7: expected a word, a rule, a tag, '|' or ';', found ')'",
        "`$a = [];`              => 3:7: expected a word, a rule or a tag, found ']'",
        "`$a = [b;`              => 3:8: expected ']', found ';'",
        "`$a = b*;`              => 3:7: expected a word, a rule, a tag, '|' or ';', found '*'",
        "`$a = b?;`              => 3:7: expected a word, a rule, a tag, '|' or ';', found '?'",
        "`$a = b<2;`             => 3:9: expected '>', found ';'",
        "`$a = b<x>;`            => 3:8: expected a repeat such as 2, 0-3 or 1-, found 'x'",
        "`$a = b<3-2>;`          => 3:8: expected a repeat that does not fall and stays within 1000, found '3-2'",
        "`$a = b<2000>;`         => 3:8: expected a repeat that does not fall and stays within 1000, found '2000'",
        "`$a = b<99999999999>;`  => 3:8: expected a repeat that does not fall and stays within 1000, found '99999999999'",
        "`$a = b<0-1 /1.5/>;`    => 3:12: expected a probability of 0 to 1, found 1.5",
        "`$a = /0/ b | c;`       => 3:6: expected a weight above 0, found 0",
        "`$a = /x/ b | c;`       => 3:6: expected a number as weight, found 'x'",
        "`$a = /1e3/ b | c;`     => 3:6: expected a number as weight, found '1e3'",
        "`$a = b {x;`            => 3:8: expected '}' at the end of the tag, found the end of file",
        "`$a = b {!{x};`         => 3:8: expected '}!}' at the end of the tag, found the end of file",
        "`$a = \"b;`             => 3:6: expected '\"' at the end of the quoted token, found the end of file",
        "`$a = \" \";`           => 3:6: expected a word in the quotes, found ' '",
        "`$a = b /* c;`          => 3:8: expected '*/' at the end of the comment, found the end of file",
        "`$a = b!;`              => 3:8: expected a language such as en-GB, found ';'",
        "`$a = $;`               => 3:6: expected a rule name of letters, digits and '_', found '$'",
        "`$a = $b-c;`            => 3:6: expected a rule name of letters, digits and '_', found '$b-c'",
        "`$a = $<x.gram>~<text/plain>;` => 3:15: expected media type application/srgs, found 'text/plain'",
        "`$a b;`                 => 3:4: expected '=', found 'b'",
        "`b = c;`                => 3:1: expected a declaration or a rule, found 'b'",
        "`$a = b; mode voice;`   => 3:9: expected a rule, found 'mode'",
        "`mode text; $a = b;`    => 3:6: expected 'voice' or 'dtmf', found 'text'",
        "`language ; $a = b;`    => 3:10: expected a language such as en-GB, found ';'",
        "`root a; $a = b;`       => 3:6: expected a rule name such as $name, found 'a'",
        "`base x; $a = b;`       => 3:6: expected a URI such as <numbers.gram>, found 'x'",
        "`meta 'x' 'y'; $a = b;` => 3:10: expected 'is', found ''y''",
        "`meta x is 'y'; $a = b;`=> 3:6: expected a quoted text, found 'x'",
        "`language fr; $a = b;`  => 3:1: expected one language declaration, found a second",
        "`$a = $b;`              => 3:6: expected a rule of this file, found $b",
        "`$a = b; $a = c;`       => 3:9: expected one rule $a, found a second (the first is at line 3)",
        "`$NULL = b; $a = b;`    => 3:1: expected a rule name other than $NULL, $VOID and $GARBAGE, found $NULL",
        "`$a = b; $b = c;`       => 3:9: expected a rule that the root uses, found $b",
        "`$a = b $GARBAGE;`      => 3:8: expected words or rules, since filler is added by the decoder, found $GARBAGE",
        "`$a = b $a;`            => 3:8: expected rules without recursion, found $a > $a",
        "`$a = $b; $b = [$c]; $c = x | $b;` => 3:30: expected rules without recursion, found $b > $c > $b",
        "`$a = $<b.gram>;`       => 3:6: expected a grammar file in the grammar folder, found $<b.gram>",
        "`$a = $<../b.gram#c>;`  => 3:6: expected a grammar file in the grammar folder, found $<../b.gram#c>",
        "`$a = $<http://example.com/b.gram>;` => 3:6: expected a grammar file in the grammar folder, found $<http://example.com/b.gram>",
      })
  void namesPlaceExpectationAndOffendingText(String rules, String expected) {
    assertEquals("a.gram:" + expected, problems(HEAD + rules));
  }

  @ParameterizedTest
  @CsvSource(
      delimiter = '|',
      quoteCharacter = '`',
      value = {
        "#JSGF 1.0;   | '#JSGF 1.0;'",
        "#ABNF 2.0;   | '#ABNF 2.0;'",
        "#ABNF 1.0    | '#ABNF 1.0'",
        "#ABNF;       | '#ABNF;'",
        "$a = b;      | '$a = b;'",
      })
  void asksForTheHeaderAndThenSaysNoMore(String header, String found) {
    String expected =
        "a.gram:1:1: expected the header '#ABNF 1.0;' alone on the first line, found ";
    assertEquals(expected + found, problems(header + "\nroot x; $ = ;\n"));
  }

  @Test
  void asksForARootAndALanguage() {
    assertEquals(
        "a.gram:1:1: expected a root declaration, found none",
        problems("#ABNF 1.0;\nlanguage en;\n$a = b;"));
    assertEquals(
        "a.gram:1:1: expected a language declaration in a voice grammar, found none",
        problems("#ABNF 1.0;\nroot $a;\n$a = b;"));
    assertEquals(
        "a.gram:2:19: expected a rule of this file as root, found $b",
        problems("#ABNF 1.0;\nlanguage en; root $b;\n$a = b;"));
    assertEquals(
        "a.gram:1:1: expected mode voice, found mode dtmf",
        problems("#ABNF 1.0;\nmode dtmf; root $a;\n$a = 1;"));
  }

  @Test
  void checksTagsOfTheLiteralsFormatOnly() {
    String rules = "$a = b {step=c value} {;} {d=1;};";
    assertEquals("", problems(HEAD + rules));
    assertEquals(
        "a.gram:4:8: expected key=value or ';' in a tag, found 'value'\n"
            + "a.gram:4:27: expected key=value or ';' in a tag, found 'd=1;'",
        problems(HEAD + "tag-format <semantics/1.0-literals>;\n" + rules));
  }

  @Test
  void namesSeveralMistakesOfOneFile() {
    assertEquals(
        "a.gram:4:12: expected ')', found ';'\n"
            + "a.gram:6:8: expected a word, a rule, a tag, '|' or ';', found '+'\n"
            + "a.gram:8:6: expected a rule of this file, found $d",
        problems(HEAD + "$a = $b $c $e;\n$b = (x | y;\n$e = z;\n$c = z +\n  | x;\n$f = $d;"));
  }

  @Test
  void checksReferencesBetweenFiles() {
    Map<String, String> texts = new HashMap<>();
    texts.put("b.gram", "#ABNF 1.0;\nlanguage en;\npublic $open = x;\nprivate $shut = y;");
    texts.put("a.gram", HEAD + "$a = $<b.gram#open> | $<b.gram#shut>;");
    assertEquals(
        "a.gram:3:23: expected a public rule of b.gram, found private $shut", problems(texts));
    texts.put("a.gram", HEAD + "$a = $<b.gram#open> | $<b.gram#other>;");
    assertEquals("a.gram:3:23: expected a rule of b.gram, found $<b.gram#other>", problems(texts));
    texts.put("a.gram", HEAD + "$a = $<b.gram#open> | $<b.gram>;");
    assertEquals("a.gram:3:23: expected a root declaration in b.gram, found none", problems(texts));
    texts.put("a.gram", HEAD + "$a = $<b.gram#open>;");
    assertEquals("b.gram:4:9: expected a rule that the root uses, found $shut", problems(texts));
  }

  @Test
  void findsRecursionThroughAnotherFile() {
    Map<String, String> texts =
        Map.of(
            "a.gram",
            HEAD + "public $a = x $<b.gram>;",
            "b.gram",
            "#ABNF 1.0;\nlanguage en; root $b;\n$b = y | $<a.gram#a>;");
    assertEquals(
        "b.gram:3:10: expected rules without recursion, found $a > $b > $a", problems(texts));
  }

  @Test
  void boundsTheListOfProblems() {
    assertEquals(Problems.LIMIT, problems(HEAD + "$a = *;\n".repeat(500)).lines().count());
  }

  @Test
  void refusesGrammarsThatGrowBeyondMemory() {
    StringBuilder rules = new StringBuilder();
    for (int i = 0; i < 30; i++) {
      rules.append("$r").append(i).append(" = $r").append(i + 1).append("<10>;\n");
    }
    String text = HEAD + "$a = $r0;\n" + rules + "$r30 = x;";
    assertEquals(
        "a.gram:3:1: expected at most 1000000 words and branches once rules are expanded,"
            + " found far more",
        problems(text));
  }

  @Test
  void refusesRulesNestedBeyondTheStackInEitherOrder() {
    StringBuilder down = new StringBuilder();
    StringBuilder up = new StringBuilder();
    for (int i = 0; i < SetChecker.DEEPEST; i++) {
      String rule = "$r" + i + " = $r" + (i + 1) + ";\n";
      down.append(rule);
      up.insert(0, rule);
    }
    String last = "$r" + SetChecker.DEEPEST + " = x;\n";
    String expectation = "expected at most 50 rules inside each other, found $r";
    assertTrue(problems(HEAD + "$a = $r0;\n" + down + last).contains(expectation));
    assertTrue(problems(HEAD + last + up + "$a = $r0;\n").contains(expectation));
    String brackets = HEAD + "$a = " + "(".repeat(5000) + "x" + ")".repeat(5000) + ";";
    assertEquals(
        "a.gram:3:56: expected at most 50 brackets inside each other, found '('",
        problems(brackets));
  }

  @Test
  void keepsControlCharactersAndLongLinesFromTheTerminal() {
    assertEquals(
        "a.gram:1:1: expected the header '#ABNF 1.0;' alone on the first line, found '\uFFFD[2J"
            + "x".repeat(75)
            + "…",
        problems("\u001B[2J" + "x".repeat(1000)));
  }

  @Test
  void saysWhichFileCannotBeRead(@TempDir Path folder) throws Exception {
    Files.write(
        folder.resolve("a.gram"),
        "#ABNF 1.0;\n$a = caf\u00E9;".getBytes(StandardCharsets.ISO_8859_1));
    Files.write(
        folder.resolve("b.gram"), "#ABNF 1.0 KLINGON-1;\n".getBytes(StandardCharsets.UTF_8));
    assertEquals(
        "[a.gram:1:1: expected UTF-8 text, found bytes that are not]",
        GrammarSet.load(folder, "a.gram").problems().toString());
    assertEquals(
        "[b.gram:1:1: expected a known encoding in the header, found 'KLINGON-1']",
        GrammarSet.load(folder, "b.gram").problems().toString());
    assertEquals(
        "[c.gram:1:1: expected a grammar file in the grammar folder, found none]",
        GrammarSet.load(folder, "c.gram").problems().toString());
  }

  @Test
  void refusesToExpandAGrammarWithProblems() {
    GrammarSet set = Grammars.set("$main = $other;");
    var refused = assertThrows(IllegalArgumentException.class, () -> PhraseNetwork.of(set));
    assertEquals(
        "expected a grammar without problems,"
            + " found main.gram:3:9: expected a rule of this file, found $other",
        refused.getMessage());
  }
}
