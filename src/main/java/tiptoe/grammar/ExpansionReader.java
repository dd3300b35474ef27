package tiptoe.grammar;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import tiptoe.grammar.AbnfText.Unexpected;
import tiptoe.grammar.Expansion.Alternative;
import tiptoe.grammar.Expansion.Alternatives;
import tiptoe.grammar.Expansion.Garbage;
import tiptoe.grammar.Expansion.Null;
import tiptoe.grammar.Expansion.Repeat;
import tiptoe.grammar.Expansion.RuleReference;
import tiptoe.grammar.Expansion.Sequence;
import tiptoe.grammar.Expansion.TagText;
import tiptoe.grammar.Expansion.Token;
import tiptoe.grammar.Expansion.Void;

/**
 * Reads rule expansions (SRGS 1.0, sections 2 and 2.8 on precedence, Appendix D):
 *
 * <pre>
 * expansion       ::= alternative ('|' alternative)*
 * alternative     ::= weight? element+
 * weight          ::= '/' number '/'
 * element         ::= subexpansion repeat?
 * subexpansion    ::= token language? | ruleReference language? | tag | '(' ')'
 *                   | '(' expansion ')' language? | '[' expansion ']' language?
 * repeat          ::= '&lt;' count ('-' count?)? probability? '&gt;'
 * probability     ::= '/' number '/'
 * ruleReference   ::= ruleName | '$' uri mediaType?
 * ruleName        ::= '$' word
 * uri             ::= '&lt;' characters '&gt;'
 * mediaType       ::= '~' uri
 * language        ::= '!' code
 * tag             ::= '{' characters '}' | '{!{' characters '}!}'
 * token           ::= word | '"' characters '"'
 * </pre>
 */
final class ExpansionReader {
  private static final Pattern NUMBER = Pattern.compile("\\d{1,9}(\\.\\d{0,9})?|\\.\\d{1,9}");
  private static final Pattern REPEAT = Pattern.compile("(?<m>\\d+)(?<range>-(?<n>\\d*))?");
  private static final int MOST_REPEATS = 1000;
  private static final int DEEPEST = 50;

  private final AbnfText text;
  private int depth;

  ExpansionReader(AbnfText text) {
    this.text = text;
  }

  Expansion expansion() throws Unexpected {
    if (depth++ == DEEPEST) {
      throw text.unexpected("at most " + DEEPEST + " brackets inside each other");
    }
    try {
      List<Alternative> choices = new ArrayList<>();
      do {
        choices.add(alternative());
      } while (text.take("|"));
      boolean single = choices.size() == 1;
      return single ? choices.get(0).expansion() : new Alternatives(choices);
    } finally {
      depth--;
    }
  }

  private Alternative alternative() throws Unexpected {
    double weight = text.peek() == '/' ? weight() : 1;
    List<Expansion> parts = new ArrayList<>();
    do {
      parts.add(element());
    } while (startsElement());
    return new Alternative(weight, parts.size() == 1 ? parts.get(0) : new Sequence(parts));
  }

  private double weight() throws Unexpected {
    Place place = text.place();
    double weight = numberInSlashes("weight");
    if (weight == 0) {
      throw new Unexpected(place, "a weight above 0", "0");
    }
    return weight;
  }

  private double numberInSlashes(String what) throws Unexpected {
    Place place = text.place();
    String number = text.takeBetween("/", "/", what).strip();
    if (!NUMBER.matcher(number).matches()) {
      throw new Unexpected(place, "a number as " + what, "'" + number + "'");
    }
    return Double.parseDouble(number);
  }

  private boolean startsElement() {
    return "$\"{([".indexOf(text.peek()) >= 0 || !text.peekWord().isEmpty();
  }

  private Expansion element() throws Unexpected {
    if (!startsElement()) {
      throw text.unexpected("a word, a rule or a tag");
    }
    Expansion part = subexpansion();
    return text.peek() == '<' ? repeat(part) : part;
  }

  private Expansion subexpansion() throws Unexpected {
    Expansion part;
    switch (text.peek()) {
      case '{' -> {
        return tag();
      }
      case '$' -> part = ruleReference();
      case '(' -> part = group();
      case '[' -> part = optional();
      default -> part = token();
    }
    language();
    return part;
  }

  private Expansion group() throws Unexpected {
    text.expect("(");
    if (text.take(")")) {
      return new Null();
    }
    Expansion inside = expansion();
    text.expect(")");
    return inside;
  }

  private Expansion optional() throws Unexpected {
    text.expect("[");
    Expansion inside = expansion();
    text.expect("]");
    return new Repeat(inside, 0, 1, Repeat.EQUAL_SHARE);
  }

  private Repeat repeat(Expansion part) throws Unexpected {
    text.expect("<");
    Place place = text.place();
    String range = text.takeWord();
    var matcher = REPEAT.matcher(range);
    double probability = text.peek() == '/' ? probability() : Repeat.EQUAL_SHARE;
    if (!matcher.matches()) {
      throw new Unexpected(place, "a repeat such as 2, 0-3 or 1-", "'" + range + "'");
    }
    text.expect(">");
    int least = count(matcher.group("m"));
    int most = least;
    if (matcher.group("range") != null) {
      most = matcher.group("n").isEmpty() ? Repeat.UNBOUNDED : count(matcher.group("n"));
    }
    if (least > most || least > MOST_REPEATS || most > MOST_REPEATS && most < Repeat.UNBOUNDED) {
      String expectation = "a repeat that does not fall and stays within " + MOST_REPEATS;
      throw new Unexpected(place, expectation, "'" + range + "'");
    }
    return new Repeat(part, least, most, probability);
  }

  private static int count(String digits) {
    return digits.length() > 6 ? MOST_REPEATS + 1 : Integer.parseInt(digits);
  }

  private double probability() throws Unexpected {
    Place place = text.place();
    double probability = numberInSlashes("probability");
    if (probability > 1) {
      throw new Unexpected(place, "a probability of 0 to 1", Double.toString(probability));
    }
    return probability;
  }

  private Expansion ruleReference() throws Unexpected {
    Place place = text.place();
    if (text.looksAt("$<")) {
      text.skipCharacter();
      String uri = uri();
      grammarMediaType();
      int hash = uri.indexOf('#');
      return hash < 0
          ? new RuleReference(uri, "", place)
          : new RuleReference(uri.substring(0, hash), uri.substring(hash + 1), place);
    }
    String name = ruleName();
    return switch (name) {
      case "NULL" -> new Null();
      case "VOID" -> new Void();
      case "GARBAGE" -> new Garbage(place);
      default -> new RuleReference("", name, place);
    };
  }

  /** A rule name without its {@code $}. */
  String ruleName() throws Unexpected {
    Place place = text.place();
    if (text.peek() != '$') {
      throw text.unexpected("a rule name such as $name");
    }
    text.skipCharacter();
    String name = text.takeWord();
    if (name.isEmpty() || name.matches("^\\d.*|.*[.:'-].*")) {
      throw new Unexpected(place, "a rule name of letters, digits and '_'", "'$" + name + "'");
    }
    return name;
  }

  String uri() throws Unexpected {
    if (text.peek() != '<') {
      throw text.unexpected("a URI such as <numbers.gram>");
    }
    return text.takeBetween("<", ">", "URI");
  }

  /** The media type behind a URI, or empty. */
  String mediaType() throws Unexpected {
    return text.take("~") ? uri() : "";
  }

  private void grammarMediaType() throws Unexpected {
    Place place = text.place();
    String type = mediaType();
    if (!type.isEmpty() && !type.equals("application/srgs")) {
      throw new Unexpected(place, "media type application/srgs", "'" + type + "'");
    }
  }

  private void language() throws Unexpected {
    if (text.take("!") && text.takeWord().isEmpty()) {
      throw text.unexpected("a language such as en-GB");
    }
  }

  TagText tag() throws Unexpected {
    Place place = text.place();
    boolean wide = text.looksAt("{!{");
    String inside =
        wide ? text.takeBetween("{!{", "}!}", "tag") : text.takeBetween("{", "}", "tag");
    return new TagText(inside.strip(), place);
  }

  private Token token() throws Unexpected {
    Place place = text.place();
    boolean quoted = text.peek() == '"';
    String token = quoted ? text.takeBetween("\"", "\"", "quoted token") : text.takeWord();
    List<String> words = List.of(token.strip().toLowerCase(Locale.ROOT).split("\\s+"));
    if (words.get(0).isEmpty()) {
      throw new Unexpected(place, "a word in the quotes", "'" + token + "'");
    }
    return new Token(words, place);
  }
}
