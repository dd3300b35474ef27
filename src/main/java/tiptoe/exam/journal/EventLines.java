package tiptoe.exam.journal;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.annotation.JsonSetter;
import com.fasterxml.jackson.annotation.Nulls;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.cfg.MutableConfigOverride;
import com.fasterxml.jackson.databind.deser.std.FromStringDeserializer;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.jsontype.NamedType;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.ToStringSerializer;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import tiptoe.exam.Entry;
import tiptoe.exam.Event;
import tiptoe.files.Sha256;

/**
 * Entries as lines: one JSON object each, whose last member {@code sum} is the first 16 digits of
 * the SHA-256 of all bytes before that member. The chain shows a change in any line but the last;
 * the sum shows it there too.
 */
public final class EventLines {
  private static final ObjectMapper JSON =
      JsonMapper.builder()
          .registerSubtypes(
              kinds(Event.class)
                  .distinct()
                  .map(kind -> new NamedType(kind, type(kind)))
                  .toArray(NamedType[]::new))
          .addModule(
              new SimpleModule()
                  .addSerializer(Instant.class, ToStringSerializer.instance)
                  .addDeserializer(Instant.class, new InstantReader()))
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .withConfigOverride(List.class, EventLines::leftOutWhenEmpty)
          .withConfigOverride(Map.class, EventLines::leftOutWhenEmpty)
          .defaultPropertyInclusion(
              JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.ALWAYS))
          .build();
  private static final ObjectReader ENTRIES = JSON.readerFor(Entry.class);
  private static final int SUM_DIGITS = 16;
  private static final byte[] SUM_START = ",\"sum\":\"".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] SUM_END = "\"}".getBytes(StandardCharsets.US_ASCII);
  private static final int TAIL = SUM_START.length + SUM_DIGITS + SUM_END.length;

  private EventLines() {}

  private static void leftOutWhenEmpty(MutableConfigOverride override) {
    override.setInclude(
        JsonInclude.Value.construct(JsonInclude.Include.NON_EMPTY, JsonInclude.Include.ALWAYS));
    override.setSetterInfo(JsonSetter.Value.forValueNulls(Nulls.AS_EMPTY));
  }

  /** The mapper that events, statements and questions are written with. */
  public static ObjectMapper json() {
    return JSON;
  }

  /** The name of this kind of event in the journal. */
  static String kind(Event event) {
    return type(event.getClass());
  }

  private static Stream<Class<?>> kinds(Class<?> of) {
    return of.isSealed()
        ? Stream.of(of.getPermittedSubclasses()).flatMap(EventLines::kinds)
        : Stream.of(of);
  }

  private static String type(Class<?> kind) {
    return new PropertyNamingStrategies.KebabCaseStrategy().translate(kind.getSimpleName());
  }

  public static Chain.Line line(Entry entry) {
    try {
      byte[] object = JSON.writeValueAsBytes(entry);
      byte[] body = Arrays.copyOf(object, object.length - 1);
      return new Chain.Line(entry, withSum(body));
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(e);
    }
  }

  private static byte[] withSum(byte[] body) {
    byte[] line = Arrays.copyOf(body, body.length + TAIL);
    System.arraycopy(tail(body, body.length), 0, line, body.length, TAIL);
    return line;
  }

  private static byte[] tail(byte[] body, int length) {
    var digest = Sha256.start();
    digest.update(body, 0, length);
    String sum = Sha256.hex(digest.digest()).substring(0, SUM_DIGITS);
    return (",\"sum\":\"" + sum + "\"}").getBytes(StandardCharsets.US_ASCII);
  }

  /**
   * Reads a line, given without its line feed.
   *
   * @throws UnreadableLine when it was changed since it was written, or is not an event
   */
  public static Entry read(byte[] line) throws UnreadableLine {
    int body = line.length - TAIL;
    if (body < 1 || !Arrays.equals(tail(line, body), Arrays.copyOfRange(line, body, line.length))) {
      throw new UnreadableLine("its checksum does not match");
    }
    try {
      byte[] object = Arrays.copyOf(line, body + 1);
      object[body] = '}';
      Entry entry = ENTRIES.readValue(object);
      if (entry.at() == null || entry.prev() == null || entry.event() == null) {
        throw new UnreadableLine("expected seq, at, prev and event");
      }
      return entry;
    } catch (UnreadableLine e) {
      throw e;
    } catch (IOException e) {
      String what = e.getMessage().lines().findFirst().orElse("nothing");
      throw new UnreadableLine("expected an event, found " + what);
    }
  }

  /** A line that cannot be taken as an entry. */
  public static final class UnreadableLine extends IOException {
    UnreadableLine(String message) {
      super(message);
    }
  }

  private static final class InstantReader extends FromStringDeserializer<Instant> {
    InstantReader() {
      super(Instant.class);
    }

    @Override
    protected Instant _deserialize(String text, DeserializationContext context) throws IOException {
      try {
        return Instant.parse(text);
      } catch (DateTimeException e) {
        return (Instant) context.handleWeirdStringValue(Instant.class, text, "not an instant");
      }
    }
  }
}
