package tiptoe.screen;

/**
 * A rectangle of cells.
 *
 * @param x column of its left edge, from 0
 * @param y row of its top edge, from 0
 * @param width columns, 0 or more
 * @param height rows, 0 or more
 */
public record Area(int x, int y, int width, int height) {
  public Area {
    width = Math.max(0, width);
    height = Math.max(0, height);
  }

  /** The part of it below its first rows. */
  public Area below(int rows) {
    int taken = Math.min(Math.max(0, rows), height);
    return new Area(x, y + taken, width, height - taken);
  }

  public Area top(int rows) {
    return new Area(x, y, width, Math.min(rows, height));
  }

  public Area bottom(int rows) {
    int kept = Math.min(Math.max(0, rows), height);
    return new Area(x, y + height - kept, width, kept);
  }
}
