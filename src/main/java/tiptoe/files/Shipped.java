package tiptoe.files;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The files that come inside the program. */
public final class Shipped {
  private static final ObjectMapper YAML =
      new ObjectMapper(new YAMLFactory())
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES);

  private Shipped() {}

  /** The text of a file that stands beside a class. */
  public static String text(Class<?> beside, String name) {
    try (InputStream in = beside.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What a YAML file says, in which no part of the type may be missing or unknown. */
  public static <T> T yaml(Class<?> beside, String name, Class<T> type) {
    try (InputStream in = beside.getResourceAsStream(name)) {
      return YAML.readValue(in, type);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Its lines, without their ends. */
  public static List<String> lines(Class<?> beside, String name) {
    return text(beside, name).lines().toList();
  }
}
