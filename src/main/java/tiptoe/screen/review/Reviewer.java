package tiptoe.screen.review;

import java.util.Optional;
import tiptoe.exam.SignerName;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

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

  /**
   * Who it is, by what was said with a call, or else by the settings.
   *
   * @param name may bring its role behind a comma; null where none was said
   * @param role null where none was said
   */
  public static Optional<Reviewer> said(String name, String role, Settings settings) {
    String kept = settings.get(Setting.WHO_NAME);
    String who = name == null ? kept : name;
    if (role != null && !who.isBlank()) {
      return Optional.of(new Reviewer(who, role));
    }
    return parse(who)
        .map(
            one ->
                one.role().isEmpty() && one.name().equals(kept.strip())
                    ? new Reviewer(one.name(), settings.get(Setting.WHO_ROLE))
                    : one);
  }

  /** Whether both name and role can be seen. */
  public boolean isVisible() {
    return SignerName.isVisible(name) && SignerName.isVisible(role);
  }

  @Override
  public String toString() {
    return role.isEmpty() ? name : name + ", " + role;
  }
}
