package tiptoe.cli;

import java.util.Optional;
import picocli.CommandLine.Option;
import tiptoe.screen.review.Reviewer;
import tiptoe.settings.Setting;
import tiptoe.settings.Settings;

/** The options that say who examines, reviews or signs; without them the settings say so. */
final class WhoOption {
  @Option(
      names = "--as",
      paramLabel = "NAME",
      description = "Who you are; else who the settings say you are.")
  private String name;

  @Option(names = "--role", paramLabel = "ROLE", description = "In which role, such as midwife.")
  private String role;

  /** Who it is, as far as it was said; a name may bring its role behind a comma. */
  Optional<Reviewer> of(Settings settings) {
    String kept = settings.get(Setting.WHO_NAME);
    String who = name == null ? kept : name;
    if (who.isBlank()) {
      return Optional.empty();
    }
    if (role != null) {
      return Optional.of(new Reviewer(who, role));
    }
    Optional<Reviewer> said = Reviewer.parse(who);
    return said.map(
        one ->
            one.role().isEmpty() && one.name().equals(kept.strip())
                ? new Reviewer(one.name(), settings.get(Setting.WHO_ROLE))
                : one);
  }

  /** Whether anything was said with the call itself. */
  boolean isSaid() {
    return name != null || role != null;
  }
}
