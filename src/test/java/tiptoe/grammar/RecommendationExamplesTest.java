package tiptoe.grammar;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The ABNF examples printed in the W3C Recommendation "Speech Recognition Grammar Specification
 * Version 1.0" of 16 March 2004, each with its section. Typed by hand; rules that an example only
 * refers to are ours.
 */
class RecommendationExamplesTest {

  @ParameterizedTest(name = "section {0}: {1}")
  @CsvSource(
      delimiter = '!',
      quoteCharacter = '`',
      value = {
        // section ! expansion ! said as a phrase, with its tags ! not a phrase
        "2.1   ! hello                        ! hello                       ! bonjour",
        "2.1   ! \"New York City\"            ! new york city               ! new york",
        "2.2.1 ! $city                        ! boston                      ! madrid",
        "2.2.3 ! hello $NULL                  ! hello                       ! hello hello",
        "2.2.3 ! hello | hello $VOID there    ! hello                       ! hello there",
        "2.3   ! this is a test               ! this is a test              ! this is a",
        "2.3   ! $action $object              ! open the window             ! the window open",
        "2.3   ! the $object is $colour       ! the window is red           ! the is red",
        "2.3   ! (fly to $city)               ! fly to boston               ! fly boston",
        "2.3   ! phone ( ) home               ! phone home                  ! phone",
        "2.4   ! Michael | Yuriko | Mary | Duke | $otherNames  ! yuriko     ! michael mary",
        "2.4   ! (Michael | Yuriko | Mary | Duke | $otherNames) ! jo        ! duke jo",
        "2.4.1 ! /10/ small | /2/ medium | large  ! medium                  ! small medium",
        "2.4.1 ! /3.1415/ pie | /1.414/ root beer | /.25/ cola ! root beer  ! root cola",
        "2.5   ! very<0-1> big                ! big                         ! very very big",
        "2.5   ! [very] big                   ! very big                    ! very",
        "2.5   ! $digit<4>                    ! one two one two             ! one two one",
        "2.5   ! $digit<2-3>                  ! one two one                 ! one",
        "2.5   ! $digit<2->                   ! one two one two one two     ! one",
        "2.5   ! fly to (Boston | Madrid)<1-1> ! fly to madrid              ! fly to boston madrid",
        "2.5.1 ! very<0-1 /0.6/> big          ! very big                    ! very very big",
        "2.5.1 ! very<0- /0.6/> big           ! very very very big          ! very",
        "2.5.1 ! $digit<2-4 /.8/>             ! one two one                 ! one",
        "2.6   ! this is a {TAG-CONTENT-1} test {TAG-CONTENT-2} ! this is a {TAG-CONTENT-1} test"
            + " {TAG-CONTENT-2} ! this is",
        "2.6   ! open {action='open';} | close {action='close';} ! close {action='close';} ! open"
            + " close",
        "2.8   ! New York | Los Angeles       ! los angeles                 ! new angeles",
        "2.8   ! a b<2>                       ! a b b                       ! a b a b",
        "2.8   ! (a b)<2>                     ! a b a b                     ! a b b",
      })
  void readsExpansions(String section, String expansion, String said, String notSaid) {
    PhraseNetwork network = Grammars.network(withHelpers("$main = " + expansion + ";\n"));
    List<String> words = Grammars.words(said.replaceAll("\\{.*?}", ""));
    Parse parse = network.parse(words);
    assertEquals("(" + said.strip() + ")", Grammars.shown(parse, words));
    assertFalse(Grammars.accepts(network, Grammars.words(notSaid)));
  }

  private static String withHelpers(String rules) {
    Map<String, String> helpers =
        Map.of(
            "$city", "boston | \"new york\"",
            "$action", "open | close",
            "$object", "[the] (window | door)",
            "$colour", "red | blue",
            "$otherNames", "Jo",
            "$digit", "one | two");
    StringBuilder all = new StringBuilder(rules);
    helpers.forEach(
        (name, expansion) -> {
          if (rules.contains(name)) {
            all.append(name).append(" = ").append(expansion).append(";\n");
          }
        });
    return all.toString();
  }

  @Test
  void readsTagsWithBracesInside() {
    // section 2.6
    PhraseNetwork network =
        Grammars.network(
            "$main = x {!{ a simple tag containing { and } needing no additional escaping }!};");
    assertEquals(
        List.of("a simple tag containing { and } needing no additional escaping"),
        network.parse(List.of("x")).phrases().get(0).tags());
  }

  @Test
  void readsLanguageAttachments() {
    // section 2.7
    PhraseNetwork network =
        Grammars.network("public $main = yes | oui!fr-CA | hai!ja | (bien sûr | sans doute)!fr;");
    assertTrue(Grammars.accepts(network, List.of("oui")));
    assertTrue(Grammars.accepts(network, List.of("bien", "sûr")));
    assertFalse(Grammars.accepts(network, List.of("fr-ca")));
  }

  @Test
  void readsRuleDefinitionsWithScopeAndDocumentation() {
    // sections 3.1, 3.2 and 3.3
    Grammar grammar =
        AbnfReader.read(
            "cities.gram",
            """
            #ABNF 1.0 ISO-8859-1;
            language en;
            $city = Boston | "New York" | Madrid;
            private $state = Florida | North Dakota;
            /**
             * A simple directive to execute an action.
             *
             * @example open the window
             * @example close the door
             */
            public $command = $action $object;
            """);
    assertEquals(List.of(), grammar.problems());
    assertEquals(List.of("city", "state", "command"), new ArrayList<>(grammar.rules().keySet()));
    assertFalse(grammar.rules().get("city").isPublic());
    assertFalse(grammar.rules().get("state").isPublic());
    assertTrue(grammar.rules().get("command").isPublic());
    assertEquals(new Place(11, 8), grammar.rules().get("command").place());
  }

  @Test
  void readsEveryDeclaration() {
    // sections 4.2 and 4.5 to 4.13
    Grammar grammar =
        AbnfReader.read(
            "a.gram",
            """
            #ABNF 1.0 UTF-8;
            // C++/Java-style single-line comment
            /* C/C++/Java-style comment */
            /** Java-style documentation comment */
            language en-US;
            mode voice;
            root $rulename;
            tag-format <semantics/1.0>;
            base <http://www.example.com/base-file-path>;
            lexicon <http://www.example.com/lexicon.file>;
            lexicon <http://www.example.com/strange-city-names.file>~<media-type>;
            http-equiv "Expires" is '0';
            http-equiv "Date" is "Thu, 12 Dec 2000 23:27:21 GMT";
            meta 'Creator' is 'a person';
            {!{ var name = {}; }!};
            $rulename = x;
            """);
    assertEquals(List.of(), grammar.problems());
    assertEquals(
        new Grammar.Header(
            "en-US",
            "voice",
            "rulename",
            new Place(7, 6),
            "semantics/1.0",
            "http://www.example.com/base-file-path",
            List.of(
                "http://www.example.com/lexicon.file",
                "http://www.example.com/strange-city-names.file"),
            Map.of(
                "Expires", "0",
                "Date", "Thu, 12 Dec 2000 23:27:21 GMT",
                "Creator", "a person")),
        grammar.header());
  }

  @Test
  void resolvesReferencesAgainstFileAndBase() {
    // sections 2.2.2 and 4.9
    String part = "#ABNF 1.0;\nlanguage en; root $all;\npublic $all = $one; public $one = ";
    GrammarSet set =
        GrammarSet.of(
            Map.of(
                "main.gram",
                Grammars.HEADER + "$main = $<parts/a.gram#one> | $<./parts/a.gram>;",
                "parts/a.gram",
                part + "x $<b.gram>~<application/srgs>;",
                "parts/b.gram",
                "#ABNF 1.0;\nlanguage en; root $all; base <deep/other.gram>;\n"
                    + "$all = $<c.gram#one>;",
                "parts/deep/c.gram",
                "#ABNF 1.0;\nlanguage en;\npublic $one = y;"),
            "main.gram");
    assertEquals(List.of(), set.problems());
    assertTrue(Grammars.accepts(PhraseNetwork.of(set), List.of("x", "y")));
  }

  @Test
  void readsKeywordsAsWordsInsideRules() {
    // section 4.15: keywords are not reserved in expansions
    assertTrue(
        Grammars.accepts(
            Grammars.network("$main = root mode | public language;"),
            List.of("public", "language")));
  }
}
