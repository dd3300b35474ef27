package tiptoe.report.send;

import java.io.IOException;
import java.net.InetAddress;
import java.net.URI;
import java.net.URISyntaxException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import tiptoe.wording.PlainText;

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
      if (uri.getRawAuthority() != null && uri.getRawAuthority().contains("@")) {
        throw new IOException(
            "expected an address without a user and a password, which others can see: name a file"
                + " with --token-file or --certificate-file");
      }
      if (uri.getRawQuery() != null || uri.getRawFragment() != null) {
        throw new IOException("expected an address without ? and #, found " + shown(text));
      }
      if (uri.getHost() == null || !secure && !plain) {
        throw new IOException(
            "expected an address such as https://server/fhir, found " + shown(text));
      }
      if (plain && !InetAddress.getByName(uri.getHost()).isLoopbackAddress()) {
        throw new IOException(
            "expected https, since records must not travel readable: " + shown(text));
      }
      return new Destination(uri);
    } catch (URISyntaxException e) {
      throw new IOException(
          "expected an address such as https://server/fhir, found " + shown(text));
    }
  }

  /** An address for people: without a user and a password. */
  public static String shown(String address) {
    return PlainText.line(address.replaceFirst("//[^/]*@", "//…@"));
  }

  /** Where a document goes: created or replaced, whichever it takes, by its identifier. */
  URI document(String identifier) {
    String query = URLEncoder.encode("urn:ietf:rfc:3986|" + identifier, StandardCharsets.UTF_8);
    return URI.create(base + "/Bundle?identifier=" + query);
  }
}
