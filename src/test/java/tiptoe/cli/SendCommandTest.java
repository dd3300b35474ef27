package tiptoe.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.HttpServer;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.DisabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import tiptoe.ChildJava;
import tiptoe.exam.Bedside;
import tiptoe.exam.journal.ExamFolder;
import tiptoe.exam.journal.OpenExam;
import tiptoe.exam.journal.RecordStore;
import tiptoe.protocol.Protocol;
import tiptoe.wording.QuestionWording;

/** What becomes of a document that a server does not take. */
@Tag("process")
@DisabledOnOs(OS.WINDOWS)
class SendCommandTest {
  @TempDir Path folder;
  private final ByteArrayOutputStream out = new ByteArrayOutputStream();
  private final ByteArrayOutputStream err = new ByteArrayOutputStream();

  private int run(String... args) {
    out.reset();
    err.reset();
    List<String> all = new ArrayList<>(List.of(args));
    all.addAll(List.of("--data", data().toString()));
    return Tiptoe.run(
        new PrintStream(out, true, StandardCharsets.UTF_8),
        new PrintStream(err, true, StandardCharsets.UTF_8),
        all.toArray(String[]::new));
  }

  private Path data() {
    return folder.resolve("data");
  }

  private ExamFolder recorded(char[] passphrase) throws IOException {
    Bedside.SetClock clock = new Bedside.SetClock();
    RecordStore store = new RecordStore(data(), Protocol.standard(), clock, QuestionWording::of);
    try (OpenExam open = store.create("Baby Rowan", "0.1.0", null, passphrase)) {
      new Bedside(clock, open.examination()).find("barlow.left positive");
      return open.folder();
    }
  }

  private static HttpServer refusing() throws IOException {
    HttpServer server =
        HttpServer.create(new InetSocketAddress(InetAddress.getByName("127.0.0.1"), 0), 0);
    server.createContext(
        "/",
        exchange -> {
          exchange.getRequestBody().readAllBytes();
          exchange.sendResponseHeaders(422, -1);
          exchange.close();
        });
    server.start();
    return server;
  }

  @Test
  void whatIsRefusedWaitsIsListedAndCleared() throws IOException {
    HttpServer server = refusing();
    try {
      String to = "http://127.0.0.1:" + server.getAddress().getPort() + "/fhir";
      Path token = Files.writeString(folder.resolve("token"), "secret-token\n");
      String name = recorded(null).name();
      assertEquals(1, run("send", name, "--draft", "--to", to, "--token-file", "" + token));
      assertTrue(err.toString().contains("the server answered 422"), err.toString());
      Path outbox = data().resolve("outbox");
      assertEquals(
          "rwx------", PosixFilePermissions.toString(Files.getPosixFilePermissions(outbox)));
      try (Stream<Path> files = Files.list(outbox)) {
        for (Path file : (Iterable<Path>) files::iterator) {
          assertFalse(Files.readString(file).contains("secret-token"));
        }
      }
      assertEquals(0, run("send", "--waiting"), err.toString());
      assertTrue(
          out.toString().matches("\\S+ \\S+  urn:uuid:\\S+  to \\Q" + to + "\\E\n"), "" + out);
      assertEquals(0, run("send", "--clear"));
      assertEquals("removed from the outbox: 1\n", out.toString());
      assertEquals(0, run("send", "--waiting"));
      assertEquals("nothing waits to be sent\n", err.toString());
    } finally {
      server.stop(0);
    }
  }

  @Test
  void anEncryptedRecordLeavesNothingReadableBehind() throws IOException {
    HttpServer server = refusing();
    try {
      Path secret = Files.writeString(folder.resolve("secret"), "quiet boats\n");
      String name = recorded("quiet boats".toCharArray()).name();
      String to = "http://127.0.0.1:" + server.getAddress().getPort() + "/fhir";
      assertEquals(1, run("send", name, "--draft", "--to", to, "--passphrase-file", "" + secret));
      assertTrue(err.toString().contains("not kept to be sent: send it again"), err.toString());
      assertEquals(0, run("send", "--waiting"));
      assertEquals("", out.toString());
      try (Stream<Path> files = Files.walk(data())) {
        for (Path file : (Iterable<Path>) files.filter(Files::isRegularFile)::iterator) {
          String text = Files.readString(file, StandardCharsets.ISO_8859_1);
          assertFalse(text.contains("Rowan") || text.contains("barlow"), file.toString());
        }
      }
    } finally {
      server.stop(0);
    }
  }

  /** The server takes the document and never ends its answer. */
  @Test
  void aSendThatHangsEndsWhenItIsToldToAndItsDocumentWaits() throws Exception {
    String name = recorded(null).name();
    CountDownLatch asked = new CountDownLatch(1);
    try (ServerSocket socket = new ServerSocket(0, 5, InetAddress.getByName("127.0.0.1"))) {
      Thread server = new Thread(() -> drip(socket, asked));
      server.setDaemon(true);
      server.start();
      List<String> command = ChildJava.command();
      command.addAll(List.of("-cp", System.getProperty("java.class.path")));
      command.addAll(List.of(Tiptoe.class.getName(), "send", name, "--draft"));
      command.addAll(List.of("--to", "http://127.0.0.1:" + socket.getLocalPort() + "/fhir"));
      command.addAll(List.of("--data", data().toString()));
      Process process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("output").toFile())
              .start();
      assertTrue(
          asked.await(120, TimeUnit.SECONDS), () -> process + " has not asked the server yet");
      process.destroy();
      boolean ended = process.waitFor(15, TimeUnit.SECONDS);
      process.destroyForcibly();
      assertTrue(ended, "it goes on");
      assertEquals(143, process.exitValue());
      assertFalse(Files.readString(folder.resolve("output")).contains("Exception"));
    }
    assertEquals(0, run("send", "--waiting"));
    assertTrue(out.toString().contains("urn:uuid:"), out.toString());
  }

  private static void drip(ServerSocket socket, CountDownLatch asked) {
    try (Socket connection = socket.accept()) {
      connection.getInputStream().read();
      asked.countDown();
      String head = "HTTP/1.1 200 OK\r\nContent-Type: application/fhir+json\r\n";
      connection
          .getOutputStream()
          .write((head + "Content-Length: 100000\r\n\r\n").getBytes(StandardCharsets.US_ASCII));
      for (int i = 0; i < 10_000; i++) {
        connection.getOutputStream().write(' ');
        Thread.sleep(20);
      }
    } catch (IOException | InterruptedException e) {
      // The other side has gone.
    }
  }
}
