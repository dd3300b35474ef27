package tiptoe.screen.review;

import java.util.Optional;

/**
 * Who reviews.
 *
 * @param name kept with every edit
 * @param role in which capacity; empty while it was not said
 */
public record Reviewer(String name, String role) {
  public Reviewer {
    if (name.isBlank()) {
      throw new IllegalArgumentException("expected the reviewer's name, found none");
    }
    name = name.strip();
    role = role.strip();
  }

  /** Reads {@code Name} or {@code Name, role}; empty where there is no name. */
  public static Optional<Reviewer> parse(String text) {
    if (text == null || text.isBlank()) {
      return Optional.empty();
    }
    int comma = text.indexOf(',');
    return comma < 0
        ? Optional.of(new Reviewer(text, ""))
        : Optional.of(new Reviewer(text.substring(0, comma), text.substring(comma + 1)));
  }

  @Override
  public String toString() {
    return role.isEmpty() ? name : name + ", " + role;
  }
}
