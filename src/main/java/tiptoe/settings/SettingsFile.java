package tiptoe.settings;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;

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

  /** What is not the first of its choices, a line each. */
  public static List<String> changed(Settings settings) {
    return Stream.of(Setting.values())
        .filter(one -> !one.choices().get(0).isEmpty())
        .filter(one -> !settings.is(one, one.choices().get(0)))
        .map(one -> "changed: " + one.path() + " " + settings.get(one))
        .toList();
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
      if (!setting.choices().get(0).isEmpty()) {
        text.append(indent).append("# ").append(Settings.either(setting)).append('\n');
      }
      text.append(indent).append(setting.key()).append(": ");
      text.append(written(settings.get(setting))).append('\n');
    }
    return text.toString();
  }

  /**
   * Keeps who works here in a file, which is made where there is none; all else in it stays.
   *
   * @param role empty to say none
   * @throws IOException when the file is not understood, or cannot be written
   */
  public static void remember(Path file, String name, String role) throws IOException {
    String before = Files.exists(file) ? Files.readString(file, StandardCharsets.UTF_8) : "";
    List<String> lines = new ArrayList<>();
    boolean within = false;
    for (String line : before.lines().toList()) {
      within = line.startsWith("who:") || within && (line.isBlank() || line.startsWith(" "));
      if (!within) {
        lines.add(line);
      }
    }
    lines.add("who: {name: " + quoted(name) + ", role: " + quoted(role) + "}");
    String after = String.join("\n", lines) + "\n";
    Settings wanted =
        parse(file.toString(), before)
            .settings()
            .with(Setting.WHO_NAME, name)
            .with(Setting.WHO_ROLE, role);
    Outcome outcome = parse(file.toString(), after);
    if (!outcome.problems().isEmpty() || !outcome.settings().equals(wanted)) {
      throw new IOException(
          "expected settings that can be added to, found: "
              + outcome.problems().stream()
                  .findFirst()
                  .map(Problem::toString)
                  .orElse("a who of another form in " + file));
    }
    Files.createDirectories(file.toAbsolutePath().getParent());
    Path beside = Files.createTempFile(file.toAbsolutePath().getParent(), NAME, ".new");
    try {
      Files.writeString(beside, after, StandardCharsets.UTF_8);
      Files.move(beside, file, StandardCopyOption.REPLACE_EXISTING);
    } finally {
      Files.deleteIfExists(beside);
    }
  }

  private static String written(String choice) {
    return choice.matches("[A-Za-z0-9][A-Za-z0-9 /.{}-]*") ? choice : quoted(choice);
  }

  /** YAML takes the strings of JSON. */
  private static String quoted(String text) {
    return '"' + new String(JsonStringEncoder.getInstance().quoteAsString(text)) + '"';
  }

  private static Outcome broken(Path file, String text) {
    return new Outcome(Settings.DEFAULT, List.of(new Problem(file.toString(), 0, text)));
  }
}
