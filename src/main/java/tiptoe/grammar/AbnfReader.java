package tiptoe.grammar;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import tiptoe.grammar.AbnfText.Unexpected;

/**
 * Reads the ABNF form of W3C SRGS 1.0 (Recommendation of 16 March 2004, Appendix D), one method a
 * production; expansions are read by {@link ExpansionReader}:
 *
 * <pre>
 * grammar         ::= header declaration* ruleDefinition*
 * header          ::= '#ABNF 1.0' (' ' encoding)? ';' end-of-line
 * declaration     ::= 'language' code ';' | 'mode' ('voice' | 'dtmf') ';' | 'root' ruleName ';'
 *                   | 'tag-format' uri ';' | 'base' uri ';' | 'lexicon' uri mediaType? ';'
 *                   | ('meta' | 'http-equiv') quoted 'is' quoted ';' | tag ';'
 * ruleDefinition  ::= ('public' | 'private')? ruleName '=' expansion ';'
 * quoted          ::= '"' characters '"' | "'" characters "'"
 * </pre>
 *
 * After a mistake it goes on behind the next semicolon at the end of a line, so that one run names
 * several.
 */
final class AbnfReader {
  private static final Pattern HEADER =
      Pattern.compile("#ABNF 1\\.0(?: (?<encoding>[A-Za-z0-9._:-]+))? ?;[ \\t]*");
  private static final Set<String> SPECIAL = Set.of("NULL", "VOID", "GARBAGE");

  private final String file;
  private final AbnfText text;
  private final ExpansionReader expansions;
  private final Problems problems = new Problems();
  private final Map<String, String> declared = new LinkedHashMap<>();
  private final Map<String, String> meta = new LinkedHashMap<>();
  private final List<String> lexicons = new ArrayList<>();
  private final Map<String, Rule> rules = new LinkedHashMap<>();
  private Place rootPlace = Place.START;

  private AbnfReader(String file, String text) {
    this.file = file;
    this.text = new AbnfText(text);
    this.expansions = new ExpansionReader(this.text);
  }

  /** Reads a grammar from its text; {@code file} is only its name. */
  static Grammar read(String file, String text) {
    return new AbnfReader(file, text).grammar();
  }

  /** The encoding that a header line names, or empty. */
  static String encoding(String firstLine) {
    var header = HEADER.matcher(firstLine);
    return header.matches() && header.group("encoding") != null ? header.group("encoding") : "";
  }

  private Grammar grammar() {
    header();
    while (!text.atEnd()) {
      try {
        text.skipSpace();
        statement();
      } catch (Unexpected e) {
        problems.add(file, e.place, e.expectation, e.found);
        text.skipStatement();
      }
    }
    if (declared.getOrDefault("mode", "voice").equals("voice")
        && !declared.containsKey("language")) {
      problems.add(file, Place.START, "a language declaration in a voice grammar", "none");
    }
    return new Grammar(file, declarations(), rules, problems.toList());
  }

  private Grammar.Header declarations() {
    return new Grammar.Header(
        declared.getOrDefault("language", ""),
        declared.getOrDefault("mode", "voice"),
        declared.getOrDefault("root", ""),
        rootPlace,
        declared.getOrDefault("tag-format", ""),
        declared.getOrDefault("base", ""),
        lexicons,
        meta);
  }

  private void header() {
    String line = text.takeLine();
    if (!HEADER.matcher(line).matches()) {
      String expectation = "the header '#ABNF 1.0;' alone on the first line";
      problems.add(file, Place.START, expectation, "'" + line + "'");
    }
  }

  private void statement() throws Unexpected {
    String word = text.peekWord();
    if (text.atEnd()) {
      return;
    }
    if (text.peek() == '$' || word.equals("public") || word.equals("private")) {
      ruleDefinition();
    } else if (rules.isEmpty()) {
      declaration(word);
    } else {
      throw text.unexpected("a rule");
    }
  }

  private void declaration(String keyword) throws Unexpected {
    if (text.peek() == '{') {
      expansions.tag();
      text.expect(";");
      return;
    }
    Place place = text.place();
    String value;
    switch (keyword) {
      case "language", "mode", "root", "tag-format", "base", "lexicon", "meta", "http-equiv" ->
          text.takeWord();
      default -> throw text.unexpected("a declaration or a rule");
    }
    switch (keyword) {
      case "language" -> value = language();
      case "mode" -> value = mode();
      case "root" -> {
        rootPlace = text.place();
        value = expansions.ruleName();
      }
      case "lexicon" -> {
        lexicons.add(expansions.uri());
        expansions.mediaType();
        text.expect(";");
        return;
      }
      case "meta", "http-equiv" -> {
        meta();
        return;
      }
      default -> value = expansions.uri();
    }
    text.expect(";");
    if (declared.putIfAbsent(keyword, value) != null) {
      problems.add(file, place, "one " + keyword + " declaration", "a second");
    }
  }

  private String language() throws Unexpected {
    if (text.peekWord().isEmpty()) {
      throw text.unexpected("a language such as en-GB");
    }
    return text.takeWord();
  }

  private String mode() throws Unexpected {
    String mode = text.peekWord();
    if (!mode.equals("voice") && !mode.equals("dtmf")) {
      throw text.unexpected("'voice' or 'dtmf'");
    }
    return text.takeWord();
  }

  private void meta() throws Unexpected {
    String name = quoted();
    text.expect("is");
    meta.put(name, quoted());
    text.expect(";");
  }

  private String quoted() throws Unexpected {
    char quote = text.peek();
    if (quote != '"' && quote != '\'') {
      throw text.unexpected("a quoted text");
    }
    return text.takeBetween(String.valueOf(quote), String.valueOf(quote), "quoted text");
  }

  private void ruleDefinition() throws Unexpected {
    boolean isPublic = text.peekWord().equals("public");
    text.takeWord();
    Place place = text.place();
    String name = expansions.ruleName();
    text.expect("=");
    Expansion expansion = expansions.expansion();
    if (text.peek() != ';') {
      throw text.unexpected("a word, a rule, a tag, '|' or ';'");
    }
    text.expect(";");
    Rule first = rules.get(name);
    if (SPECIAL.contains(name)) {
      problems.add(file, place, "a rule name other than $NULL, $VOID and $GARBAGE", "$" + name);
    } else if (first != null) {
      String where = "a second (the first is at line " + first.place().line() + ")";
      problems.add(file, place, "one rule $" + name, where);
    } else {
      rules.put(name, new Rule(name, isPublic, expansion, place));
    }
  }
}
