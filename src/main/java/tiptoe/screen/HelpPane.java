package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

/** All that can be said to the tool or pressed, and what the signs mean. */
record HelpPane(Canvas canvas, int seconds) {
  void draw(Area area) {
    canvas.text(area, 0, 0, "SAY OR PRESS", Ink.STRONG);
    List<List<Line>> blocks = new ArrayList<>();
    Stream.of(Voice.values()).forEach(voice -> blocks.add(lines(voice.offer())));
    blocks.add(lines("i, then type or scan who the baby is, or what you would say"));
    blocks.add(answers(AnswerKey.SIDES, "while the side is asked for"));
    blocks.add(answers(AnswerKey.WHICH, "while it is asked which is right"));
    blocks.add(lines("1, 2 and so on while a list is offered below"));
    blocks.add(lines("\"say that again\" repeats the last answer"));
    blocks.add(lines("\"undo\", \"hang on\", \"we're done\" are asked about"));
    blocks.add(lines("\"now the hips\" goes to a region"));
    blocks.add(lines("Ctrl-C leaves; the record can be gone on with"));
    blocks.add(signs());
    canvas.lines(area.below(1), Pages.at(blocks, area.height() - 1, seconds));
  }

  private static List<Line> lines(String... texts) {
    return Stream.of(texts).map(text -> new Line("  " + text, Ink.PLAIN)).toList();
  }

  private static List<Line> answers(List<AnswerKey> keys, String when) {
    return lines(keys.stream().map(key -> key.offer() + " " + when).toArray(String[]::new));
  }

  private List<Line> signs() {
    Glyphs glyphs = canvas.glyphs();
    return List.of(
        new Line("SIGNS", Ink.STRONG),
        sign(glyphs.key(), "key step missing", glyphs.open(), "another missing"),
        sign(glyphs.done(), "as expected", glyphs.benign(), "worth a note"),
        sign(glyphs.abnormal(), "not as expected", glyphs.skipped(), "left out"),
        sign(glyphs.unsure(), "not recorded", glyphs.fresh(), "recorded just now"));
  }

  private static Line sign(String one, String meaning, String two, String other) {
    return new Line("  %s %-18s %s %s".formatted(one, meaning, two, other), Ink.PLAIN);
  }
}
