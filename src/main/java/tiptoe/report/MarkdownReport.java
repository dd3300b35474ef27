package tiptoe.report;

import tiptoe.wording.PlainText;
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

  // What people said or typed must not turn into links, images, HTML or a list of its own.
  private static String escaped(String words) {
    return PlainText.line(words)
        .replaceAll("([\\\\`*_{}\\[\\]<>#|!~&])", "\\\\$1")
        .replaceFirst("^(\\s*)([-=])", "$1\\\\$2")
        .replaceFirst("^(\\s*[0-9]+)([.)])(?=\\s|$)", "$1\\\\$2");
  }
}
