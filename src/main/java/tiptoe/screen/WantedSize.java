package tiptoe.screen;

import java.util.Optional;

/** The size of terminal on which a screen shows all it has. */
public final class WantedSize {
  private static final int COLUMNS = 80;
  private static final int ROWS = 24;

  private WantedSize() {}

  /** What to say where less is there. */
  public static Optional<String> missed(Area all) {
    return all.width() >= COLUMNS && all.height() >= ROWS
        ? Optional.empty()
        : Optional.of(
            "shows all on %d x %d or more, has %d x %d"
                .formatted(COLUMNS, ROWS, all.width(), all.height()));
  }
}
