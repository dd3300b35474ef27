package tiptoe.screen;

import com.googlecode.lanterna.SGR;
import com.googlecode.lanterna.TextColor;
import java.util.EnumSet;
import java.util.Set;

/**
 * How text is set off. Weight and reversal say it on any terminal; a colour may say it again.
 * Nothing is told by an ink alone: a word or a sign always goes with it.
 */
public enum Ink {
  PLAIN(TextColor.ANSI.DEFAULT),
  STRONG(TextColor.ANSI.DEFAULT, SGR.BOLD),
  QUIET(TextColor.ANSI.DEFAULT),
  BAR(TextColor.ANSI.DEFAULT, SGR.REVERSE),
  MISSING(TextColor.ANSI.YELLOW, SGR.BOLD),
  GOOD(TextColor.ANSI.GREEN),
  FRESH(TextColor.ANSI.GREEN, SGR.BOLD),
  UNSURE(TextColor.ANSI.MAGENTA),
  QUESTION(TextColor.ANSI.CYAN, SGR.BOLD, SGR.REVERSE),
  ALERT(TextColor.ANSI.RED, SGR.BOLD);

  private final TextColor colour;
  private final Set<SGR> styles;

  Ink(TextColor colour, SGR... styles) {
    this.colour = colour;
    this.styles = EnumSet.noneOf(SGR.class);
    this.styles.addAll(Set.of(styles));
  }

  TextColor colour(boolean coloured) {
    return coloured ? colour : TextColor.ANSI.DEFAULT;
  }

  Set<SGR> styles() {
    return styles;
  }
}
