package tiptoe.report.send;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Optional;
import tiptoe.wording.PlainText;

/**
 * What a server answered to a conditional update, read as the FHIR R4 RESTful API has it
 * (hl7.org/fhir/R4/http.html, 3.1.0.4 and 3.1.0.5).
 *
 * @param status of HTTP
 * @param type media type without parameters, in lower case; empty where none is given
 * @param body whole
 * @param location where a redirect points; empty for none
 * @param retryAfter the header of that name; empty for none
 */
record Answer(int status, String type, byte[] body, String location, String retryAfter) {
  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int EXCERPT = 300;

  static Answer of(HttpResponse<byte[]> response) {
    return new Answer(
        response.statusCode(),
        header(response, "Content-Type").replaceFirst(";.*", "").strip().toLowerCase(Locale.ROOT),
        response.body(),
        header(response, "Location"),
        header(response, "Retry-After"));
  }

  private static String header(HttpResponse<byte[]> response, String name) {
    return response.headers().firstValue(name).orElse("");
  }

  boolean isSuccess() {
    return status == 200 || status == 201 || status == 204;
  }

  /** Whether the same may succeed later. */
  boolean isPassing() {
    return status == 408 || status == 429 || status >= 500 && status != 501 && status != 505;
  }

  /** How long the server asks to be left alone; empty where it does not say. */
  Optional<Duration> pause(Clock clock) {
    try {
      if (retryAfter.matches("[0-9]{1,9}")) {
        return Optional.of(Duration.ofSeconds(Long.parseLong(retryAfter)));
      }
      if (!retryAfter.isBlank()) {
        ZonedDateTime at = ZonedDateTime.parse(retryAfter, DateTimeFormatter.RFC_1123_DATE_TIME);
        Duration until = Duration.between(clock.instant(), at.toInstant());
        return Optional.of(until.isNegative() ? Duration.ZERO : until);
      }
    } catch (DateTimeException e) {
      // As if it had not said so.
    }
    return Optional.empty();
  }

  /**
   * Checks that a success is that of a FHIR server, for others, such as the sign-in page of a
   * network, answer 200 to everything: no body, a bundle, or an outcome without an error.
   *
   * @throws IOException when it is none
   */
  void requireFhir() throws IOException {
    if (body.length == 0) {
      return;
    }
    if (!type.equals("application/fhir+json") && !type.equals("application/json")) {
      throw new IOException(
          "expected the answer of a FHIR server, found "
              + (type.isEmpty() ? "text of no type" : PlainText.line(type))
              + ": "
              + excerpt());
    }
    JsonNode resource;
    try {
      resource = JSON.readTree(body);
    } catch (IOException e) {
      throw new IOException("expected the answer of a FHIR server, found " + excerpt(), e);
    }
    String kind = resource.path("resourceType").asText();
    if (kind.equals("OperationOutcome")) {
      for (JsonNode issue : resource.path("issue")) {
        if (issue.path("severity").asText().matches("error|fatal")) {
          throw new IOException("the server reports an error: " + excerpt());
        }
      }
    } else if (!kind.equals("Bundle")) {
      throw new IOException("expected the answer of a FHIR server, found " + excerpt());
    }
  }

  /** What a failure means and what can be done, in one line. */
  String trouble(boolean credentials) {
    String said = excerpt();
    return "the server answered "
        + status
        + ", "
        + meaning(credentials)
        + (said.isEmpty() ? "" : ": " + said);
  }

  private String meaning(boolean credentials) {
    return switch (status) {
      case 301, 302, 303, 307, 308 ->
          "it points to another address, which is not followed: "
              + PlainText.line(location)
              + "; name that with --to if it is right";
      case 401 ->
          credentials
              ? "it does not accept the token or certificate"
              : "it wants to know who sends: name a file with --token-file or --certificate-file";
      case 403 -> "it does not let this sender keep documents there";
      case 404, 405, 410, 501 -> "it keeps no documents at this address: check --to";
      case 400, 406, 415, 422 -> "it does not accept the document";
      case 409 -> "the document was changed there meanwhile";
      case 412 -> "it holds more than one document with this identifier, and changes none";
      case 413 -> "the document is too large for it";
      case 429 -> "it has too much to do";
      case 503 -> "it is out of service for now";
      default -> status >= 500 ? "it is in trouble" : "which does not say that it has the document";
    };
  }

  private String excerpt() {
    String line =
        PlainText.line(
                new String(body, 0, Math.min(body.length, 4 * EXCERPT), StandardCharsets.UTF_8))
            .replaceAll("\\s+", " ")
            .strip();
    return line.length() > EXCERPT ? line.substring(0, EXCERPT) + "…" : line;
  }
}
