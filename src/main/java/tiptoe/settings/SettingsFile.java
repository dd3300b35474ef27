package tiptoe.settings;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;

/** The configuration file {@code tiptoe.yaml}: where it is, what it says, how one looks. */
public final class SettingsFile {
  /** Its name in the platform's place for settings of a user. */
  public static final String NAME = "tiptoe.yaml";

  private SettingsFile() {}

  /**
   * What a file came to.
   *
   * @param settings what was understood; the defaults for the rest
   * @param problems everything that was not understood, in order; empty for a good file
   */
  public record Outcome(Settings settings, List<Problem> problems) {
    public Outcome {
      problems = List.copyOf(problems);
    }
  }

  /**
   * Something wrong in the file.
   *
   * @param file as the user knows it
   * @param line from 1; 0 where no line is to blame
   * @param text what was expected and what was found
   */
  public record Problem(String file, int line, String text) {
    @Override
    public String toString() {
      return file + (line > 0 ? " line " + line : "") + ": " + text;
    }
  }

  /** Reads the file in the usual place; where there is none, the defaults hold. */
  public static Outcome readUsual(Path file) {
    return Files.exists(file) ? read(file) : new Outcome(Settings.DEFAULT, List.of());
  }

  /** Reads a file that must exist. */
  public static Outcome read(Path file) {
    try {
      return parse(file.toString(), Files.readString(file, StandardCharsets.UTF_8));
    } catch (NoSuchFileException e) {
      return broken(file, "expected a configuration file, found none");
    } catch (java.nio.charset.MalformedInputException e) {
      return broken(file, "expected UTF-8 text, found other bytes");
    } catch (AccessDeniedException e) {
      return broken(file, "expected leave to read it, found none");
    } catch (IOException e) {
      return broken(file, "expected a readable file, found: " + e.getMessage());
    }
  }

  /** Reads the text of a file. */
  public static Outcome parse(String file, String yaml) {
    return new SettingsReader(file).read(yaml);
  }

  /** A file with every setting at its default, each explained. */
  public static String template() {
    return text(Settings.DEFAULT);
  }

  /** A file that says these settings, each explained; the first choice is the default. */
  public static String text(Settings settings) {
    StringBuilder text =
        new StringBuilder("# Settings of Tiptoe. What is left out is the first of its choices.\n");
    String section = null;
    for (Setting setting : Setting.values()) {
      if (setting.section() != null && !setting.section().equals(section)) {
        text.append('\n').append(setting.section()).append(":\n");
      } else if (setting.section() == null) {
        text.append('\n');
      }
      section = setting.section();
      String indent = section == null ? "" : "  ";
      text.append(indent).append("# ").append(setting.about()).append('\n');
      text.append(indent).append("# ").append(Settings.either(setting)).append('\n');
      text.append(indent).append(setting.key()).append(": ");
      text.append(settings.get(setting)).append('\n');
    }
    return text.toString();
  }

  private static Outcome broken(Path file, String text) {
    return new Outcome(Settings.DEFAULT, List.of(new Problem(file.toString(), 0, text)));
  }
}
