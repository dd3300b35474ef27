package tiptoe.report;

import java.util.Locale;
import tiptoe.wording.PlainText;
import tiptoe.wording.RecordWording;

/** Plain text, for pasting into a chart. */
final class TextReport extends Outline {
  private TextReport() {}

  static String of(RecordWording findings) {
    return new TextReport().tell(findings);
  }

  @Override
  String heading(int level, String words) {
    String line = PlainText.line(words);
    return (level < 3 ? line.toUpperCase(Locale.ROOT) : line) + "\n";
  }

  @Override
  String item(String words) {
    return "  " + PlainText.line(words) + "\n";
  }

  @Override
  String emphasised(String words) {
    return words;
  }
}
