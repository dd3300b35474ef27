package tiptoe.settings;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Reads settings and keeps the line of everything it refuses.
 *
 * <pre>
 * file    = { entry } .
 * entry   = key ":" choice | section ":" { key ":" choice } .
 * </pre>
 */
final class SettingsReader {
  private static final YAMLFactory YAML = new YAMLFactory();
  private static final int MOST_PROBLEMS = 20;

  private final String file;
  private final Map<Setting, String> chosen = new EnumMap<>(Setting.class);
  private final Map<String, Integer> lines = new HashMap<>();
  private final List<SettingsFile.Problem> problems = new ArrayList<>();

  SettingsReader(String file) {
    this.file = file;
  }

  SettingsFile.Outcome read(String yaml) {
    try (JsonParser parser = YAML.createParser(yaml)) {
      file(parser);
    } catch (JsonProcessingException e) {
      int line = e.getLocation() == null ? 0 : e.getLocation().getLineNr();
      refuse(
          line,
          "expected YAML, found "
              + e.getOriginalMessage().lines().findFirst().orElse("something else"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return new SettingsFile.Outcome(new Settings(chosen), problems);
  }

  private void file(JsonParser parser) throws IOException {
    JsonToken first = parser.nextToken();
    if (first == null || first == JsonToken.VALUE_NULL) {
      return;
    }
    if (first != JsonToken.START_OBJECT) {
      refuse(line(parser), "expected settings such as tones: off, found " + shown(parser));
      return;
    }
    entries(parser, null);
    if (parser.nextToken() != null) {
      refuse(line(parser), "expected one document, found a second");
    }
  }

  private void entries(JsonParser parser, String section) throws IOException {
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String path = section == null ? parser.currentName() : section + "." + parser.currentName();
      int line = line(parser);
      Integer before = lines.putIfAbsent(path, line);
      if (before != null) {
        refuse(line, "expected each setting once, found " + path + " again after line " + before);
      }
      parser.nextToken();
      entry(parser, path, line, section == null);
    }
  }

  private void entry(JsonParser parser, String path, int line, boolean top) throws IOException {
    boolean isSection =
        top && List.of(Setting.values()).stream().anyMatch(s -> path.equals(s.section()));
    if (isSection) {
      if (parser.currentToken() == JsonToken.START_OBJECT) {
        entries(parser, path);
      } else if (parser.currentToken() != JsonToken.VALUE_NULL) {
        refuse(line, "expected settings below " + path + ", found " + shown(parser));
        parser.skipChildren();
      }
      return;
    }
    Setting.at(path)
        .ifPresentOrElse(
            setting -> choice(parser, setting, line),
            () -> refuse(line, "expected " + known(path) + ", found " + path));
    parser.skipChildren();
  }

  private void choice(JsonParser parser, Setting setting, int line) {
    String choice = setting.read(shown(parser));
    if (parser.currentToken().isScalarValue() && setting.takes(choice)) {
      chosen.put(setting, choice);
    } else {
      refuse(
          line,
          "expected " + Settings.either(setting) + " for " + setting.path() + ", found " + choice);
    }
  }

  private static String known(String path) {
    int dot = path.indexOf('.');
    return Stream.of(Setting.values())
        .filter(one -> dot < 0 || path.substring(0, dot).equals(one.section()))
        .map(one -> dot < 0 && one.section() != null ? one.section() : one.path())
        .distinct()
        .collect(Collectors.joining(", ", "one of ", ""));
  }

  private void refuse(int line, String text) {
    if (problems.size() < MOST_PROBLEMS) {
      problems.add(new SettingsFile.Problem(file, line, text));
    }
  }

  private static String shown(JsonParser parser) {
    try {
      return switch (parser.currentToken()) {
        case START_OBJECT -> "a section";
        case START_ARRAY -> "a list";
        case VALUE_NULL -> "nothing";
        default -> parser.getText();
      };
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int line(JsonParser parser) {
    return parser.currentTokenLocation().getLineNr();
  }
}
