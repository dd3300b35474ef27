package tiptoe.screen;

import java.util.Map;
import tiptoe.wording.PlainText;
import tiptoe.wording.Sign;

/**
 * The signs beside words. Each differs from the others in shape, so that none needs colour.
 *
 * @param done an answer as expected
 * @param benign an answer worth a note
 * @param abnormal an answer that is not as expected
 * @param skipped a step that was left out
 * @param unsure something heard that was not recorded
 * @param key a key step without an answer
 * @param open another step without an answer
 * @param here the region being examined
 * @param fresh what was recorded just now
 * @param across a horizontal rule
 * @param down a vertical rule
 * @param full a filled piece of a bar
 * @param empty an empty piece of a bar
 * @param plain whether only ASCII may be shown
 */
public record Glyphs(
    String done,
    String benign,
    String abnormal,
    String skipped,
    String unsure,
    String key,
    String open,
    String here,
    String fresh,
    String across,
    String down,
    String full,
    String empty,
    boolean plain) {

  /** Box drawing, blocks and a tick: those that are one column wide in every common font. */
  public static final Glyphs BLOCKS =
      new Glyphs("✓", "~", "!", "-", "?", "█", "░", "▌", "◄", "─", "│", "█", "░", false);

  public static final Glyphs ASCII =
      new Glyphs("+", "~", "!", "-", "?", "#", ".", ">", "<", "-", "|", "#", ".", true);

  private static final Map<Character, String> PLAIN =
      Map.of(
          '—', "-", '–', "-", '…', "...", '°', " deg ", 'é', "e", '≥', ">=", '≤', "<=", '×', "x",
          '“', "\"", '”', "\"");

  public String of(Sign sign) {
    return switch (sign) {
      case DONE -> done;
      case BENIGN -> benign;
      case ABNORMAL -> abnormal;
      case SKIPPED -> skipped;
      case UNSURE -> unsure;
      case KEY -> key;
      case OPEN -> open;
      case NONE -> " ";
    };
  }

  /** The text without anything a terminal cannot show: control characters, wide or unknown ones. */
  String clean(String from) {
    String text = PlainText.line(from);
    StringBuilder clean = new StringBuilder(text.length());
    for (int i = 0; i < text.length(); i++) {
      char sign = text.charAt(i);
      if (plain && sign > '~') {
        clean.append(PLAIN.getOrDefault(sign, "?"));
      } else if (sign > '\u2fff' || Character.isSurrogate(sign) || !Character.isDefined(sign)) {
        clean.append('?');
      } else {
        clean.append(sign);
      }
    }
    return clean.toString();
  }
}
