package tiptoe.report.send;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpsConfigurator;
import com.sun.net.httpserver.HttpsExchange;
import com.sun.net.httpserver.HttpsParameters;
import com.sun.net.httpserver.HttpsServer;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.KeyStore;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import javax.net.ssl.KeyManagerFactory;
import javax.net.ssl.SSLContext;
import javax.net.ssl.SSLParameters;
import javax.net.ssl.TrustManagerFactory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A server that asks for a client certificate; all keys are made for the test by keytool. */
@Tag("process")
class ClientCertificateTest {
  private static final String PASSWORD = "quiet boats";

  @TempDir static Path keys;
  @TempDir Path folder;

  private final List<String> clients = new ArrayList<>();
  private HttpsServer server;

  @BeforeAll
  static void makeKeys() throws Exception {
    for (String who : List.of("server", "ward", "stranger")) {
      keytool(
          "-genkeypair",
          "-alias",
          who,
          "-keyalg",
          "EC",
          "-dname",
          "CN=" + who,
          "-ext",
          "san=ip:127.0.0.1",
          "-validity",
          "2",
          "-storetype",
          "PKCS12",
          "-keystore",
          keys.resolve(who + ".p12").toString());
    }
    keytool(
        "-exportcert",
        "-rfc",
        "-alias",
        "server",
        "-keystore",
        keys.resolve("server.p12").toString(),
        "-file",
        keys.resolve("server.pem").toString());
    Files.writeString(keys.resolve("password"), PASSWORD + "\n");
    Files.writeString(keys.resolve("wrong"), "loud boats\n");
  }

  private static void keytool(String... arguments) throws Exception {
    List<String> command = new ArrayList<>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "keytool").toString());
    command.addAll(List.of(arguments));
    command.addAll(List.of("-storepass", PASSWORD));
    Process process = new ProcessBuilder(command).redirectErrorStream(true).start();
    String said = new String(process.getInputStream().readAllBytes());
    assertEquals(0, process.waitFor(), said);
  }

  private static KeyStore store(String who) throws Exception {
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(keys.resolve(who + ".p12"))) {
      store.load(in, PASSWORD.toCharArray());
    }
    return store;
  }

  @BeforeEach
  void start() throws Exception {
    KeyManagerFactory own = KeyManagerFactory.getInstance("PKIX");
    own.init(store("server"), PASSWORD.toCharArray());
    KeyStore known = KeyStore.getInstance("PKCS12");
    known.load(null, null);
    known.setCertificateEntry("ward", store("ward").getCertificate("ward"));
    TrustManagerFactory trusted = TrustManagerFactory.getInstance("PKIX");
    trusted.init(known);
    SSLContext context = SSLContext.getInstance("TLS");
    context.init(own.getKeyManagers(), trusted.getTrustManagers(), null);
    server = HttpsServer.create(new InetSocketAddress(InetAddress.getByName("127.0.0.1"), 0), 0);
    server.setHttpsConfigurator(
        new HttpsConfigurator(context) {
          @Override
          public void configure(HttpsParameters parameters) {
            SSLParameters wanted = context.getDefaultSSLParameters();
            wanted.setNeedClientAuth(true);
            parameters.setSSLParameters(wanted);
          }
        });
    server.createContext(
        "/fhir",
        exchange -> {
          exchange.getRequestBody().readAllBytes();
          clients.add(((HttpsExchange) exchange).getSSLSession().getPeerPrincipal().getName());
          exchange.sendResponseHeaders(204, -1);
          exchange.close();
        });
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  private void send(String who, String authority) throws Exception {
    Credentials credentials =
        Credentials.read(
            null,
            who == null ? null : keys.resolve(who + ".p12"),
            who == null ? null : keys.resolve("password"),
            authority == null ? null : keys.resolve(authority));
    Outbox outbox = new Outbox(folder.resolve("outbox"));
    Outbox.Letter letter =
        new Outbox.Letter(
            "urn:uuid:1", "https://127.0.0.1:" + server.getAddress().getPort() + "/fhir", "{}");
    outbox.put(letter);
    new Sender(outbox, credentials, 1, Duration.ofSeconds(20), pause -> {}).send(letter);
    assertEquals(List.of(), outbox.contents().letters());
  }

  @Test
  void sendsWithACertificateThatTheServerKnows() throws Exception {
    send("ward", "server.pem");
    assertEquals(List.of("CN=ward"), clients);
  }

  @Test
  void sendsNothingWithoutOneWithAnotherOrToAServerThatNobodyVouchesFor() {
    assertThrows(IOException.class, () -> send(null, "server.pem"));
    assertThrows(IOException.class, () -> send("stranger", "server.pem"));
    assertThrows(IOException.class, () -> send("ward", null));
    assertEquals(List.of(), clients);
    assertTrue(Files.isDirectory(folder.resolve("outbox")));
  }

  @Test
  void aWrongPasswordIsSaidToBeSoAndNotRepeated() {
    String told =
        assertThrows(
                IOException.class,
                () -> Credentials.read(null, keys.resolve("ward.p12"), keys.resolve("wrong"), null))
            .getMessage();
    assertTrue(told.startsWith("expected a certificate as PKCS #12, with its password"), told);
    assertFalse(told.contains("loud"), told);
  }
}
