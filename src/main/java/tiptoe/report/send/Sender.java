package tiptoe.report.send;

import java.io.IOException;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;

/**
 * Brings letters to their server: a conditional update by identifier, so that sending twice leaves
 * one document; tried again with growing pauses while the server or the way to it is in trouble.
 */
public final class Sender {
  private static final int TOO_MANY = 429;
  private static final int TIMEOUT = 408;
  private static final int SERVER_TROUBLE = 500;
  private static final int EXCERPT = 300;

  /** Waits between two tries. */
  @FunctionalInterface
  public interface Pause {
    void take(Duration duration) throws InterruptedException;
  }

  private final Outbox outbox;
  private final HttpClient client;
  private final int tries;
  private final Duration patience;
  private final Pause pause;

  /**
   * @param tries how often a letter is tried, 1 or more
   * @param patience how long one try may take
   * @param pause waits between tries: 1 s, 2 s, 4 s …
   */
  public Sender(Outbox outbox, int tries, Duration patience, Pause pause) {
    this.outbox = outbox;
    this.tries = tries;
    this.patience = patience;
    this.pause = pause;
    this.client =
        HttpClient.newBuilder()
            .connectTimeout(patience)
            .followRedirects(HttpClient.Redirect.NEVER)
            .build();
  }

  /**
   * Sends a letter that is in the outbox, and removes it once the server has it.
   *
   * @throws IOException when the server refuses it or cannot be reached; it stays in the outbox
   */
  public void send(Outbox.Letter letter) throws IOException, InterruptedException {
    HttpRequest request =
        HttpRequest.newBuilder(Destination.parse(letter.to()).document(letter.identifier()))
            .timeout(patience)
            .header("Content-Type", "application/fhir+json; charset=UTF-8")
            .header("Accept", "application/fhir+json")
            .PUT(HttpRequest.BodyPublishers.ofString(letter.document(), StandardCharsets.UTF_8))
            .build();
    String trouble = "";
    for (int attempt = 0; attempt < tries; attempt++) {
      if (attempt > 0) {
        pause.take(Duration.ofSeconds(1L << Math.min(attempt - 1, 6)));
      }
      try {
        HttpResponse<String> answer = client.send(request, HttpResponse.BodyHandlers.ofString());
        int status = answer.statusCode();
        if (status == 200 || status == 201) {
          outbox.remove(letter);
          return;
        }
        trouble = "the server answered " + status + " " + excerpt(answer.body());
        if (status < SERVER_TROUBLE && status != TOO_MANY && status != TIMEOUT) {
          throw new Refused(trouble);
        }
      } catch (Refused refused) {
        throw refused;
      } catch (IOException e) {
        trouble = "no answer from " + letter.to() + " (" + reason(e) + ")";
      }
    }
    throw new IOException(trouble + "; tried " + tries + " times, kept in the outbox");
  }

  private static String reason(IOException problem) {
    return problem.getMessage() == null ? problem.getClass().getSimpleName() : problem.getMessage();
  }

  private static String excerpt(String body) {
    String line = body.replaceAll("\\s+", " ").strip();
    return line.length() > EXCERPT ? line.substring(0, EXCERPT) + "…" : line;
  }

  /** The server will not take it, however often it is sent. */
  private static final class Refused extends IOException {
    private static final long serialVersionUID = 1;

    Refused(String message) {
      super(message + "; kept in the outbox");
    }
  }
}
