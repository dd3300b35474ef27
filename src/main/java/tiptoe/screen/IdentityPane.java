package tiptoe.screen;

import java.util.List;
import tiptoe.exam.Baby;
import tiptoe.wording.RecordWording;

/**
 * Whose examination it is, large, until something was said: so that a wrong baby is noticed before
 * the first finding.
 */
record IdentityPane(Canvas canvas) {
  private static final String DRAWABLE = "[A-Za-z0-9 -]+";

  static boolean wanted(RecordWording wording) {
    return wording.record().utterances().isEmpty() && wording.record().baby().isIdentified();
  }

  /** Draws it at the top of the area; gives what room is left below. */
  Area draw(Area area, RecordWording wording) {
    int width = area.width() - 3;
    Baby baby = wording.record().baby();
    int row = 0;
    for (String fact : List.of("record-number", "name")) {
      String text = baby.fact(fact).orElse("");
      // What has no large letters would be shown wrong.
      if (text.matches(DRAWABLE)) {
        for (String line : BigLetters.fit(text, width, area.height() / 3, canvas.glyphs())) {
          canvas.text(area, row++, 1, line, Ink.STRONG);
        }
        row++;
      }
    }
    for (String line : Wrap.words(wording.identityLine(), width)) {
      canvas.text(area, row++, 1, line, Ink.STRONG);
    }
    return area.below(row + 1);
  }
}
