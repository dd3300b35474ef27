package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/** All that can be said to the tool or pressed, and what the signs mean. */
record HelpPane(Canvas canvas, int seconds) {
  void draw(Area area) {
    canvas.text(area, 0, 0, "SAY OR PRESS", Ink.STRONG);
    List<List<Line>> blocks = new ArrayList<>();
    for (Voice voice : Voice.values()) {
      blocks.add(List.of(new Line("  " + voice.offer(), Ink.PLAIN)));
    }
    blocks.add(
        List.of(
            new Line("  i, then type or scan who the baby is, or what you would say", Ink.PLAIN)));
    blocks.add(answers(AnswerKey.SIDES, "while the side is asked for"));
    blocks.add(answers(AnswerKey.WHICH, "while it is asked which is right"));
    blocks.add(List.of(new Line("  1, 2 and so on while a list is offered below", Ink.PLAIN)));
    blocks.add(List.of(new Line("  \"say that again\" repeats the last answer", Ink.PLAIN)));
    blocks.add(
        List.of(new Line("  \"undo\", \"hang on\", \"we're done\" are asked about", Ink.PLAIN)));
    blocks.add(List.of(new Line("  \"now the hips\" goes to a region", Ink.PLAIN)));
    blocks.add(List.of(new Line("  Ctrl-C leaves; the record can be gone on with", Ink.PLAIN)));
    blocks.add(signs());
    canvas.lines(area.below(1), Pages.at(blocks, area.height() - 1, seconds));
  }

  private static List<Line> answers(List<AnswerKey> keys, String when) {
    return keys.stream().map(key -> new Line("  " + key.offer() + " " + when, Ink.PLAIN)).toList();
  }

  private List<Line> signs() {
    Glyphs glyphs = canvas.glyphs();
    List<Line> lines = new ArrayList<>();
    lines.add(new Line("SIGNS", Ink.STRONG));
    lines.add(sign(glyphs.key(), "key step missing", glyphs.open(), "another missing"));
    lines.add(sign(glyphs.done(), "as expected", glyphs.benign(), "worth a note"));
    lines.add(sign(glyphs.abnormal(), "not as expected", glyphs.skipped(), "left out"));
    lines.add(sign(glyphs.unsure(), "not recorded", glyphs.fresh(), "recorded just now"));
    return lines;
  }

  private static Line sign(String one, String meaning, String two, String other) {
    return new Line("  %s %-18s %s %s".formatted(one, meaning, two, other), Ink.PLAIN);
  }
}
