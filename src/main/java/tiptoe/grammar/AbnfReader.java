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
 *                   | 'tag-format' uri ';' | 'base' uri ';' | lexicon | meta | tag ';'
 * lexicon         ::= 'lexicon' uri mediaType? ';'
 * meta            ::= ('meta' | 'http-equiv') quoted 'is' quoted ';'
 * quoted          ::= '"' characters '"' | "'" characters "'"
 * ruleDefinition  ::= ('public' | 'private')? ruleName '=' expansion ';'
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
    if (header()) {
      while (!text.atEnd()) {
        statement();
      }
      String mode = declared.getOrDefault("mode", "voice");
      if (mode.equals("voice") && !declared.containsKey("language")) {
        problems.add(file, Place.START, "a language declaration in a voice grammar", "none");
      }
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

  /** Without its header a text is no grammar, and nothing more is said about it. */
  private boolean header() {
    String line = text.takeLine();
    boolean right = HEADER.matcher(line).matches();
    if (!right) {
      String expectation = "the header '#ABNF 1.0;' alone on the first line";
      problems.add(file, Place.START, expectation, "'" + line + "'");
    }
    return right;
  }

  private void statement() {
    try {
      text.skipSpace();
      String word = text.peekWord();
      if (text.peek() == '$' || word.equals("public") || word.equals("private")) {
        ruleDefinition();
      } else if (text.peek() == '{' && rules.isEmpty()) {
        expansions.tag();
        text.expect(";");
      } else if (!text.atEnd()) {
        declaration(word);
      }
    } catch (Unexpected e) {
      problems.add(file, e.place, e.expectation, e.found);
      text.skipStatement();
    }
  }

  private void declaration(String keyword) throws Unexpected {
    Place place = text.place();
    String value =
        switch (rules.isEmpty() ? keyword : "") {
          case "language" -> language();
          case "mode" -> mode();
          case "root" -> root();
          case "tag-format", "base" -> {
            text.takeWord();
            yield expansions.uri();
          }
          case "lexicon" -> lexicon();
          case "meta", "http-equiv" -> meta();
          default -> throw text.unexpected(rules.isEmpty() ? "a declaration or a rule" : "a rule");
        };
    text.expect(";");
    if (declared.put(keyword, value) != null
        && !Set.of("lexicon", "meta", "http-equiv").contains(keyword)) {
      problems.add(file, place, "one " + keyword + " declaration", "a second");
    }
  }

  private String language() throws Unexpected {
    text.takeWord();
    if (text.peekWord().isEmpty()) {
      throw text.unexpected("a language such as en-GB");
    }
    return text.takeWord();
  }

  private String mode() throws Unexpected {
    text.takeWord();
    String mode = text.peekWord();
    if (!mode.equals("voice") && !mode.equals("dtmf")) {
      throw text.unexpected("'voice' or 'dtmf'");
    }
    return text.takeWord();
  }

  private String root() throws Unexpected {
    text.takeWord();
    rootPlace = text.place();
    return expansions.ruleName();
  }

  private String lexicon() throws Unexpected {
    text.takeWord();
    String uri = expansions.uri();
    expansions.mediaType();
    lexicons.add(uri);
    return uri;
  }

  private String meta() throws Unexpected {
    text.takeWord();
    String name = quoted();
    text.expect("is");
    String content = quoted();
    meta.put(name, content);
    return content;
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
    // a rule that cannot be read is still there: references to it are no second mistake
    Expansion expansion = new Expansion.Void();
    try {
      text.expect("=");
      expansion = expansions.expansion();
      if (text.peek() != ';') {
        throw text.unexpected("a word, a rule, a tag, '|' or ';'");
      }
      text.expect(";");
    } finally {
      define(new Rule(name, isPublic, expansion, place));
    }
  }

  private void define(Rule rule) {
    Rule first = rules.get(rule.name());
    if (SPECIAL.contains(rule.name())) {
      String expectation = "a rule name other than $NULL, $VOID and $GARBAGE";
      problems.add(file, rule.place(), expectation, "$" + rule.name());
    } else if (first != null) {
      String found = "a second (the first is at line " + first.place().line() + ")";
      problems.add(file, rule.place(), "one rule $" + rule.name(), found);
    } else {
      rules.put(rule.name(), rule);
    }
  }
}
