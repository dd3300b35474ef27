package tiptoe.grammar;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * One grammar file (SRGS 1.0, section 4) as read: its own syntax is checked, what it refers to is
 * not yet.
 *
 * @param file name of the file, relative to the grammar folder, with forward slashes
 * @param header the declarations
 * @param rules the rules by name, in the order of the file
 * @param problems what is wrong with the text, at most {@value Problems#LIMIT}
 */
public record Grammar(String file, Header header, Map<String, Rule> rules, List<Problem> problems) {

  /**
   * The declarations of a grammar file; empty text where one is not made.
   *
   * @param language language of the grammar, such as {@code en-GB}
   * @param mode {@code voice} or {@code dtmf}
   * @param root name of the root rule without {@code $}
   * @param rootPlace where the root is declared
   * @param tagFormat what tags mean, such as {@code semantics/1.0-literals}
   * @param base the URI that references are relative to
   * @param lexicons pronunciation lexicons referred to; we read none of them
   * @param meta {@code meta} and {@code http-equiv} names with their content
   */
  public record Header(
      String language,
      String mode,
      String root,
      Place rootPlace,
      String tagFormat,
      String base,
      List<String> lexicons,
      Map<String, String> meta) {
    public Header {
      lexicons = List.copyOf(lexicons);
      meta = Collections.unmodifiableMap(new LinkedHashMap<>(meta));
    }
  }

  public Grammar {
    rules = Collections.unmodifiableMap(new LinkedHashMap<>(rules));
    problems = List.copyOf(problems);
  }
}
