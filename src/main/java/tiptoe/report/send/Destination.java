package tiptoe.report.send;

import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;

/**
 * The base address of a FHIR server.
 *
 * @param base without a slash at its end
 */
public record Destination(URI base) {

  /**
   * Reads an address: https, or http where the server is this very machine.
   *
   * @throws IOException when it is no such address
   */
  public static Destination parse(String text) throws IOException {
    try {
      URI uri = new URI(text.replaceFirst("/+$", ""));
      boolean secure = "https".equalsIgnoreCase(uri.getScheme());
      boolean plain = "http".equalsIgnoreCase(uri.getScheme());
      if (uri.getHost() == null || !secure && !plain) {
        throw new IOException("expected an address such as https://server/fhir, found " + text);
      }
      if (plain && !InetAddress.getByName(uri.getHost()).isLoopbackAddress()) {
        throw new IOException("expected https, since records must not travel readable: " + text);
      }
      return new Destination(uri);
    } catch (URISyntaxException e) {
      throw new IOException("expected an address such as https://server/fhir, found " + text, e);
    }
  }

  /** Where a document goes: created or replaced, whichever it takes, by its identifier. */
  URI document(String identifier) {
    String query = URLEncoder.encode("urn:ietf:rfc:3986|" + identifier, StandardCharsets.UTF_8);
    return URI.create(base + "/Bundle?identifier=" + query);
  }
}
