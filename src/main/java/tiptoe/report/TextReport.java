package tiptoe.report;

import java.util.Locale;
import tiptoe.wording.RecordWording;

/** Plain text, for pasting into a chart. */
final class TextReport extends Outline {
  private TextReport() {}

  static String of(RecordWording findings) {
    return new TextReport().tell(findings);
  }

  @Override
  String heading(int level, String words) {
    return (level < 3 ? words.toUpperCase(Locale.ROOT) : words) + "\n";
  }

  @Override
  String item(String words) {
    return "  " + words.replaceAll("\\R", " ") + "\n";
  }

  @Override
  String emphasised(String words) {
    return words;
  }
}
