package tiptoe.screen;

import java.util.List;

/** A line of text and how it is set off. */
public record Line(String text, Ink ink) {
  static final Line BLANK = new Line("", Ink.PLAIN);

  /** The same in lines of at most so many characters. */
  List<Line> wrapped(int width) {
    return Wrap.words(text, width).stream().map(part -> new Line(part, ink)).toList();
  }
}
