package tiptoe.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import tiptoe.files.Shipped;
import tiptoe.protocol.Region;
import tiptoe.protocol.Side;
import tiptoe.wording.RecordWording;

/**
 * A baby from the front and from behind, drawn by us. Each region has a mark: a filled square where
 * something is abnormal, a ring where something was not examined, a small dot where all is answered
 * and nothing abnormal. The shapes tell them apart in grey too.
 */
final class BodyFigure {
  /** Where the body is drawn from in front, and from behind. */
  private static final int FRONT = 66;

  private static final int BACK = 256;

  /** The middle of a body within its own drawing. */
  private static final int MIDDLE = 75;

  /** The names of marks stand in two columns beside the front, and end or begin here. */
  private static final int RIGHT_NAMES_END = 84;

  private static final int LEFT_NAMES_BEGIN = 198;

  /** Letters of 9 pt where a user unit is a CSS pixel; and how far their lines must be apart. */
  private static final int LETTERS = 12;

  private static final int LINE = 14;

  /** Where the marks of a region sit; {@code apart} is 0 for one mark. */
  private record Place(int x, int y, int apart) {}

  private record Marks(Map<String, Place> marks) {}

  private static final Map<String, Place> PLACES =
      Shipped.yaml(BodyFigure.class, "body-marks.yaml", Marks.class).marks();

  /** Arms, legs, trunk and head: back to front. */
  private static final String BODY = String.join("", Shipped.lines(BodyFigure.class, "body.svg"));

  private BodyFigure() {}

  static String svg(RecordWording findings) {
    Markup svg = new Markup();
    svg.add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 416 262\" width=\"416\""
            + " height=\"262\" role=\"img\" aria-label=\"%s\">",
        words(findings));
    body(svg, FRONT);
    body(svg, BACK);
    List<Region> front = new ArrayList<>();
    List<Region> behind = new ArrayList<>();
    List<Region> nowhere = new ArrayList<>();
    for (Region region : findings.record().protocol().regions()) {
      Place place = PLACES.get(region.id());
      (place == null ? nowhere : place.x() > BACK ? behind : front).add(region);
    }
    front.sort(Comparator.comparing(region -> PLACES.get(region.id()).y()));
    names(svg, findings, everyOther(front, 0), RIGHT_NAMES_END, true);
    names(svg, findings, everyOther(front, 1), LEFT_NAMES_BEGIN, false);
    names(svg, findings, behind, BACK + MIDDLE + 44, false);
    for (Region region : findings.record().protocol().regions()) {
      if (PLACES.containsKey(region.id())) {
        marks(svg, findings, region);
      }
    }
    elsewhere(svg, findings, nowhere);
    return svg.add("</svg>").toString();
  }

  private static List<Region> everyOther(List<Region> all, int from) {
    return IntStream.range(0, all.size()).filter(i -> i % 2 == from).mapToObj(all::get).toList();
  }

  /** Names in one column, each as near to its mark as the one above lets it, with a line to it. */
  private static void names(
      Markup svg, RecordWording findings, List<Region> column, int x, boolean toTheLeft) {
    int above = 0;
    for (Region region : column) {
      Place place = PLACES.get(region.id());
      int y = Math.max(place.y(), above + LINE);
      above = y;
      int mark = toTheLeft ? place.x() - place.apart() : place.x() + place.apart();
      svg.add(
          "<path d=\"M%d %d L%d %d\" stroke=\"#bbb\" stroke-width=\"0.7\" fill=\"none\"/>",
          toTheLeft ? x + 2 : x - 2, y, mark, place.y());
      text(svg, x, y + 4, toTheLeft ? "end" : "start", name(findings, region));
    }
  }

  /** The marks of what is on no part of the body, in a row below. */
  private static void elsewhere(Markup svg, RecordWording findings, List<Region> regions) {
    int x = 10;
    for (Region region : regions) {
      String name = name(findings, region);
      mark(svg, x, 250, findings.isAbnormal(region), isMissing(findings, region));
      text(svg, x + 9, 254, "start", name);
      x += 30 + 8 * name.length();
    }
  }

  private static String name(RecordWording findings, Region region) {
    return findings.words().title(region.label());
  }

  /** What the figure shows, for those who cannot see it. */
  static String words(RecordWording findings) {
    return "Body figure. Abnormal: "
        + names(findings, true)
        + ". Not fully examined: "
        + names(findings, false)
        + ".";
  }

  private static String names(RecordWording findings, boolean abnormal) {
    List<String> names =
        findings.record().protocol().regions().stream()
            .filter(
                region ->
                    abnormal ? findings.isAbnormal(region) : !findings.missing(region).isEmpty())
            .map(findings.words()::region)
            .toList();
    return names.isEmpty() ? "none" : String.join(", ", names);
  }

  private static void marks(Markup svg, RecordWording findings, Region region) {
    Place place = PLACES.get(region.id());
    svg.add("<g><title>%s</title>", name(findings, region));
    if (place.apart() == 0) {
      mark(svg, place.x(), place.y(), findings.isAbnormal(region), isMissing(findings, region));
    } else {
      for (Side side : Side.values()) {
        int x = place.x() + (side == Side.LEFT ? place.apart() : -place.apart());
        mark(
            svg, x, place.y(), findings.isAbnormal(region, side), findings.isMissing(region, side));
      }
    }
    svg.add("</g>");
  }

  private static boolean isMissing(RecordWording findings, Region region) {
    return !findings.missing(region).isEmpty();
  }

  private static void mark(Markup svg, int x, int y, boolean abnormal, boolean missing) {
    if (missing) {
      svg.add(
          "<circle cx=\"%d\" cy=\"%d\" r=\"4.6\" fill=\"none\" stroke=\"#333\""
              + " stroke-width=\"1\" stroke-dasharray=\"2,1.4\"/>",
          x, y);
    }
    if (abnormal) {
      svg.add(
          "<rect x=\"%.1f\" y=\"%.1f\" width=\"6\" height=\"6\" fill=\"#000\"/>", x - 3.0, y - 3.0);
    } else if (!missing) {
      svg.add("<circle cx=\"%d\" cy=\"%d\" r=\"1.6\" fill=\"#333\"/>", x, y);
    }
  }

  private static void body(Markup svg, int x) {
    svg.add(
        "<g transform=\"translate(%d 0)\" fill=\"#f4f1ec\" stroke=\"#8a8175\""
            + " stroke-width=\"1.2\" stroke-linejoin=\"round\">%s</g>",
        x, Markup.of(BODY));
  }

  private static void text(Markup svg, int x, int y, String anchor, String words) {
    svg.add(
        "<text x=\"%d\" y=\"%d\" text-anchor=\"%s\" font-family=\"DejaVu Sans\""
            + " font-size=\"%d\" fill=\"#333\">%s</text>",
        x, y, anchor, LETTERS, words);
  }
}
