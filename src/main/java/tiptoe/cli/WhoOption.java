package tiptoe.cli;

import java.util.Optional;
import picocli.CommandLine.Option;
import tiptoe.screen.review.Reviewer;
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
    return Reviewer.said(name, role, settings);
  }

  /** Whether anything was said with the call itself. */
  boolean isSaid() {
    return name != null || role != null;
  }
}
