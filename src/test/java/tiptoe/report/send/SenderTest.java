package tiptoe.report.send;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.rest.annotation.ConditionalUrlParam;
import ca.uhn.fhir.rest.annotation.IdParam;
import ca.uhn.fhir.rest.annotation.ResourceParam;
import ca.uhn.fhir.rest.annotation.Update;
import ca.uhn.fhir.rest.api.MethodOutcome;
import ca.uhn.fhir.rest.server.IResourceProvider;
import ca.uhn.fhir.rest.server.RestfulServer;
import jakarta.servlet.Filter;
import jakarta.servlet.FilterChain;
import jakarta.servlet.ServletException;
import jakarta.servlet.ServletRequest;
import jakarta.servlet.ServletResponse;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.eclipse.jetty.ee10.servlet.FilterHolder;
import org.eclipse.jetty.ee10.servlet.ServletContextHandler;
import org.eclipse.jetty.ee10.servlet.ServletHolder;
import org.eclipse.jetty.server.Server;
import org.eclipse.jetty.server.ServerConnector;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.IdType;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Against a real HAPI FHIR R4 server on loopback, with faults put in its way. */
class SenderTest {
  private static final String DOCUMENT =
      "{\"resourceType\":\"Bundle\",\"type\":\"document\",\"identifier\":{\"system\":"
          + "\"urn:ietf:rfc:3986\",\"value\":\"urn:uuid:1\"}}";

  private final Bundles bundles = new Bundles();
  private final Faults faults = new Faults();
  private final List<Duration> pauses = new ArrayList<>();
  private Server server;
  private String base;

  @TempDir Path folder;

  @BeforeEach
  void start() throws Exception {
    server = new Server();
    ServerConnector connector = new ServerConnector(server);
    connector.setHost("127.0.0.1");
    server.addConnector(connector);
    RestfulServer fhir = new RestfulServer(FhirContext.forR4());
    fhir.setResourceProviders(bundles);
    ServletContextHandler context = new ServletContextHandler("/");
    context.addServlet(new ServletHolder(fhir), "/fhir/*");
    context.addFilter(
        new FilterHolder(faults), "/*", EnumSet.of(jakarta.servlet.DispatcherType.REQUEST));
    server.setHandler(context);
    server.start();
    base = "http://127.0.0.1:" + connector.getLocalPort() + "/fhir";
  }

  @AfterEach
  void stop() throws Exception {
    server.stop();
  }

  private Sender sender(Outbox outbox) {
    return new Sender(outbox, Credentials.NONE, 4, Duration.ofSeconds(2), pauses::add);
  }

  private Outbox.Letter letter() {
    return new Outbox.Letter("urn:uuid:1", base, DOCUMENT);
  }

  @Test
  void theServerHasTheDocumentAndTheOutboxIsEmpty() throws Exception {
    Outbox outbox = new Outbox(folder);
    outbox.put(letter());
    sender(outbox).send(letter());
    assertEquals(1, bundles.kept.size());
    assertEquals(List.of(), outbox.contents().letters());
  }

  @Test
  void sendingTwiceLeavesOneDocument() throws Exception {
    Outbox outbox = new Outbox(folder);
    sender(outbox).send(letter());
    sender(outbox).send(letter());
    assertEquals(1, bundles.kept.size());
    assertEquals(2, bundles.updates);
  }

  @Test
  void triesAgainWithGrowingPausesWhileTheServerIsInTrouble() throws Exception {
    faults.next.addAll(List.of(Fault.SERVER_ERROR, Fault.BUSY, Fault.DROPPED));
    sender(new Outbox(folder)).send(letter());
    assertEquals(1, bundles.kept.size());
    assertEquals(
        List.of(Duration.ofSeconds(1), Duration.ofSeconds(2), Duration.ofSeconds(4)), pauses);
  }

  @Test
  void keepsTheLetterWhenTheServerStaysInTrouble() throws Exception {
    Outbox outbox = new Outbox(folder);
    outbox.put(letter());
    for (int i = 0; i < 4; i++) {
      faults.next.add(Fault.SERVER_ERROR);
    }
    IOException problem = assertThrows(IOException.class, () -> sender(outbox).send(letter()));
    assertTrue(problem.getMessage().endsWith("tried 4 times, kept in the outbox"));
    // As after a crash: another outbox over the same folder still has it.
    Outbox again = new Outbox(folder);
    assertEquals(List.of(letter()), again.contents().letters());
    sender(again).send(again.contents().letters().get(0));
    assertEquals(1, bundles.kept.size());
    assertEquals(List.of(), again.contents().letters());
  }

  @Test
  void givesUpOnASlowAnswerAndTriesAgain() throws Exception {
    faults.next.add(Fault.SLOW);
    sender(new Outbox(folder)).send(letter());
    assertEquals(1, bundles.kept.size());
    assertEquals(1, pauses.size());
  }

  @Test
  void doesNotTryAgainWhatTheServerRefuses() {
    faults.next.add(Fault.REFUSED);
    IOException problem =
        assertThrows(IOException.class, () -> sender(new Outbox(folder)).send(letter()));
    assertTrue(problem.getMessage().startsWith("the server answered 422"));
    assertEquals(List.of(), pauses);
  }

  @Test
  void saysSoWhenNobodyAnswers() throws IOException {
    int port;
    try (ServerSocket free = new ServerSocket(0)) {
      port = free.getLocalPort();
    }
    Outbox.Letter lost =
        new Outbox.Letter("urn:uuid:1", "http://127.0.0.1:" + port + "/fhir", DOCUMENT);
    IOException problem =
        assertThrows(IOException.class, () -> sender(new Outbox(folder)).send(lost));
    assertTrue(problem.getMessage().startsWith("no answer from http://127.0.0.1:" + port));
  }

  @Test
  void anUnfinishedFileIsNoLetter() throws IOException {
    Files.writeString(folder.resolve("part-1.tmp"), "{\"identi");
    assertEquals(List.of(), new Outbox(folder).contents().letters());
  }

  @ParameterizedTest
  @ValueSource(strings = {"http://192.0.2.1/fhir", "ftp://127.0.0.1/x", "server", "https:///fhir"})
  void takesOnlyHttpsOrThisMachine(String address) {
    assertThrows(IOException.class, () -> Destination.parse(address));
  }

  @Test
  void addressesADocumentByItsIdentifier() throws IOException {
    assertEquals(
        "https://example.org/fhir/Bundle?identifier=urn%3Aietf%3Arfc%3A3986%7Curn%3Auuid%3A1",
        Destination.parse("https://example.org/fhir/").document("urn:uuid:1").toString());
  }

  private enum Fault {
    SERVER_ERROR,
    BUSY,
    DROPPED,
    SLOW,
    REFUSED
  }

  /** Puts the next fault in the way of a request. */
  private static final class Faults implements Filter {
    private final Deque<Fault> next = new ArrayDeque<>();

    @Override
    public void doFilter(ServletRequest request, ServletResponse response, FilterChain chain)
        throws IOException, ServletException {
      Fault fault = next.poll();
      HttpServletResponse answer = (HttpServletResponse) response;
      if (fault == null) {
        chain.doFilter(request, response);
      } else {
        switch (fault) {
          case SERVER_ERROR -> answer.sendError(500);
          case BUSY -> answer.sendError(503);
          case REFUSED -> answer.sendError(422);
          case DROPPED -> throw new ServletException("connection dropped");
          case SLOW -> {
            try {
              Thread.sleep(3000);
            } catch (InterruptedException e) {
              Thread.currentThread().interrupt();
            }
          }
        }
      }
    }
  }

  /** Keeps bundles in memory by the identifier of the conditional update. */
  public static final class Bundles implements IResourceProvider {
    private final Map<String, Bundle> kept = new ConcurrentHashMap<>();
    private int updates;

    @Override
    public Class<Bundle> getResourceType() {
      return Bundle.class;
    }

    /** Conditional update. */
    @Update
    public MethodOutcome update(
        @ResourceParam Bundle bundle, @IdParam IdType id, @ConditionalUrlParam String condition) {
      updates++;
      boolean created = kept.put(condition, bundle) == null;
      MethodOutcome outcome = new MethodOutcome(new IdType("Bundle", "1", "1"));
      outcome.setCreated(created);
      return outcome;
    }
  }
}
