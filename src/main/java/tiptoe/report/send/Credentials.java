package tiptoe.report.send;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.cert.Certificate;
import java.security.cert.CertificateFactory;
import java.util.Arrays;
import javax.net.ssl.KeyManager;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.TrustManager;
import javax.net.ssl.TrustManagerFactory;
import tiptoe.files.BoundedFile;

/**
 * What proves to a server who sends: a bearer token (RFC 6750) or a client certificate. Each comes
 * from a file, since an argument can be seen by every user of the machine, and none is stored.
 */
public final class Credentials {
  /** For a server that asks for none. */
  public static final Credentials NONE = new Credentials(null, null);

  private static final String TOKEN = "[A-Za-z0-9._~+/-]+=*";

  private final String token;
  private final SSLContext connections;

  private Credentials(String token, SSLContext connections) {
    this.token = token;
    this.connections = connections;
  }

  /**
   * Reads what is named; each may be null.
   *
   * @param token a bearer token as the first line
   * @param certificate a client certificate with its private key, PKCS #12 (RFC 7292)
   * @param password the password of the certificate as the first line; none for an empty one
   * @param authority the authority that vouches for the server, one certificate or more in PEM or
   *     DER; without it those of the Java platform are trusted
   * @throws IOException when a file is not what it should be; the message holds none of it
   */
  public static Credentials read(Path token, Path certificate, Path password, Path authority)
      throws IOException {
    return new Credentials(
        token == null ? null : token(token),
        certificate == null && authority == null
            ? null
            : connections(certificate, password, authority));
  }

  private static String token(Path file) throws IOException {
    String line = firstLine(file).strip();
    if (!line.matches(TOKEN)) {
      throw new IOException("expected a bearer token in the first line of " + file);
    }
    return line;
  }

  private static String firstLine(Path file) throws IOException {
    return BoundedFile.SECRET.lines(file).stream().findFirst().orElse("");
  }

  private static SSLContext connections(Path certificate, Path password, Path authority)
      throws IOException {
    try {
      KeyManager[] keys = certificate == null ? null : keys(certificate, password);
      TrustManager[] trusted = authority == null ? null : trusted(authority);
      SSLContext connections = SSLContext.getInstance("TLS");
      connections.init(keys, trusted, null);
      return connections;
    } catch (GeneralSecurityException e) {
      throw new IOException("expected certificates that can be used, found none", e);
    }
  }

  private static KeyManager[] keys(Path file, Path passwordFile)
      throws IOException, GeneralSecurityException {
    char[] password = passwordFile == null ? new char[0] : firstLine(passwordFile).toCharArray();
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (var in = BoundedFile.CERTIFICATE.stream(file)) {
      try {
        store.load(in, password);
      } catch (IOException | GeneralSecurityException e) {
        throw new IOException(
            "expected a certificate as PKCS #12, with its password in the file that"
                + " --certificate-password-file names, found something else in "
                + file,
            e);
      }
      KeyManagerFactory keys =
          KeyManagerFactory.getInstance(KeyManagerFactory.getDefaultAlgorithm());
      keys.init(store, password);
      return keys.getKeyManagers();
    } finally {
      Arrays.fill(password, '\0');
    }
  }

  private static TrustManager[] trusted(Path file) throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance(KeyStore.getDefaultType());
    store.load(null, null);
    try (var in = BoundedFile.CERTIFICATE.stream(file)) {
      int number = 0;
      for (Certificate one : CertificateFactory.getInstance("X.509").generateCertificates(in)) {
        store.setCertificateEntry("authority-" + number++, one);
      }
    }
    if (store.size() == 0) {
      throw new IOException("expected a certificate of an authority, found none in " + file);
    }
    TrustManagerFactory trust =
        TrustManagerFactory.getInstance(TrustManagerFactory.getDefaultAlgorithm());
    trust.init(store);
    return trust.getTrustManagers();
  }

  boolean areGiven() {
    return token != null || connections != null;
  }

  void addTo(HttpClient.Builder client) {
    if (connections != null) {
      client.sslContext(connections);
    }
  }

  void addTo(HttpRequest.Builder request) {
    if (token != null) {
      request.header("Authorization", "Bearer " + token);
    }
  }
}
