package tiptoe.files;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** The files that come inside the program. */
public final class Shipped {
  private Shipped() {}

  /** The text of a file that stands beside a class. */
  public static String text(Class<?> beside, String name) {
    try (InputStream in = beside.getResourceAsStream(name)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** What a file says, in the format of a mapper. */
  public static <T> T read(ObjectMapper mapper, Class<?> beside, String name, Class<T> type) {
    try (InputStream in = beside.getResourceAsStream(name)) {
      return mapper.readValue(in, type);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Its lines, without their ends. */
  public static List<String> lines(Class<?> beside, String name) {
    return text(beside, name).lines().toList();
  }
}
