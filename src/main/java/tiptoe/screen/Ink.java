package tiptoe.screen;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextColor;
import com.googlecode.lanterna.TextColor.ANSI;
import java.util.EnumSet;
import java.util.Set;

/**
 * How text is set off. Weight and reversal say it on any terminal; a colour may say it again.
 * Nothing is told by an ink alone: a word or a sign always goes with it. Where there is a colour
 * behind the text, the text has one too, so that it can be read on light and dark terminals.
 */
public enum Ink {
  PLAIN(ANSI.DEFAULT, ANSI.DEFAULT),
  STRONG(ANSI.DEFAULT, ANSI.DEFAULT, SGR.BOLD),
  QUIET(ANSI.DEFAULT, ANSI.DEFAULT),
  BAR(ANSI.DEFAULT, ANSI.DEFAULT, SGR.REVERSE),
  MISSING(ANSI.DEFAULT, ANSI.DEFAULT, SGR.BOLD),
  KEY_MISSING(ANSI.BLACK, ANSI.YELLOW, SGR.BOLD),
  GOOD(ANSI.DEFAULT, ANSI.DEFAULT),
  FRESH(ANSI.BLACK, ANSI.GREEN, SGR.BOLD, SGR.REVERSE),
  UNSURE(ANSI.MAGENTA, ANSI.DEFAULT),
  QUESTION(ANSI.BLACK, ANSI.CYAN, SGR.BOLD, SGR.REVERSE),
  ALERT(ANSI.WHITE, ANSI.RED, SGR.BOLD);

  private final TextColor front;
  private final TextColor back;
  private final Set<SGR> styles;

  Ink(TextColor front, TextColor back, SGR... styles) {
    this.front = front;
    this.back = back;
    this.styles = EnumSet.noneOf(SGR.class);
    this.styles.addAll(Set.of(styles));
  }

  TextColor front(boolean coloured) {
    return coloured ? front : ANSI.DEFAULT;
  }

  TextColor back(boolean coloured) {
    return coloured ? back : ANSI.DEFAULT;
  }

  /** Weight and reversal; a colour behind the text stands for the reversal where there are any. */
  SGR[] styles(boolean coloured) {
    Set<SGR> used = EnumSet.noneOf(SGR.class);
    used.addAll(styles);
    if (coloured && back != ANSI.DEFAULT) {
      // Bold black is drawn as dark grey by some.
      used.removeAll(front == ANSI.BLACK ? Set.of(SGR.REVERSE, SGR.BOLD) : Set.of(SGR.REVERSE));
    }
    return used.toArray(SGR[]::new);
  }
}
