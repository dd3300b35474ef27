package tiptoe.screen;

import java.util.ArrayList;
import java.util.List;

/**
 * Turns what has no room at once into pages that follow each other, so that everything can be read
 * in full without a key. Which page it is depends on the second of the examination alone.
 */
final class Pages {
  /** How long a page stays, in s. */
  static final int SECONDS = 5;

  private Pages() {}

  /**
   * The lines to show now; the last of them names the page where there are several.
   *
   * @param blocks lines that belong together; they are parted only where they have no room
   * @param rows rows there are
   * @param seconds the second of the examination
   */
  static List<Line> at(List<List<Line>> blocks, int rows, int seconds) {
    if (rows <= 0) {
      return List.of();
    }
    if (blocks.stream().mapToInt(List::size).sum() <= rows) {
      return blocks.stream().flatMap(List::stream).toList();
    }
    int room = Math.max(1, rows - 1);
    List<List<Line>> pages = pages(blocks, room);
    int number = seconds / SECONDS % pages.size();
    List<Line> page = new ArrayList<>(pages.get(number));
    if (rows > 1) {
      page.add(new Line("  page " + (number + 1) + " of " + pages.size(), Ink.QUIET));
    }
    return page;
  }

  private static List<List<Line>> pages(List<List<Line>> blocks, int room) {
    List<List<Line>> pages = new ArrayList<>();
    List<Line> page = new ArrayList<>();
    for (List<Line> block : blocks) {
      if (!page.isEmpty() && page.size() + block.size() > room) {
        pages.add(page);
        page = new ArrayList<>();
      }
      for (Line line : block) {
        if (page.size() == room) {
          pages.add(page);
          page = new ArrayList<>();
        }
        page.add(line);
      }
    }
    pages.add(page);
    return pages;
  }
}
