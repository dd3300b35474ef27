package tiptoe.report;

import tiptoe.wording.RecordWording;

/** Markdown, for pasting into a chart that renders it. */
final class MarkdownReport extends Outline {
  private MarkdownReport() {}

  static String of(RecordWording findings) {
    return new MarkdownReport().tell(findings);
  }

  @Override
  String heading(int level, String words) {
    return "#".repeat(level) + " " + escaped(words) + "\n\n";
  }

  @Override
  String item(String words) {
    return "- " + escaped(words) + "\n";
  }

  @Override
  String emphasised(String words) {
    return "**" + escaped(words) + "**";
  }

  // What people said or typed must not turn into links, images or HTML.
  private static String escaped(String words) {
    return words.replaceAll("([\\\\`*_{}\\[\\]<>#|!~])", "\\\\$1").replaceAll("\\R", " ");
  }
}
