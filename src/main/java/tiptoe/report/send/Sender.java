package tiptoe.report.send;

import java.io.IOException;
import java.io.PrintStream;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import tiptoe.wording.PlainText;
import tiptoe.wording.ProblemWording;

/**
 * Brings letters to their server: a conditional update by identifier, so that sending twice leaves
 * one document; tried again with growing pauses while the server or the way to it is in trouble.
 */
public final class Sender {
  /** A server that says what it has stores a document of some 100 KiB; none says more than this. */
  private static final int MOST_BYTES = 16 << 20;

  /** A server that asks for more is not waited for. */
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(60);

  /** Waits between two tries. */
  @FunctionalInterface
  public interface Pause {
    void take(Duration duration) throws InterruptedException;
  }

  private final Outbox outbox;
  private final Credentials credentials;
  private final HttpClient client;
  private final int tries;
  private final Duration patience;
  private final Pause pause;

  /**
   * @param tries how often a letter is tried, 1 or more
   * @param patience how long one try may take from end to end, the whole answer included
   * @param pause waits between tries: as long as the server asks, else 1 s, 2 s, 4 s …
   */
  public Sender(Outbox outbox, Credentials credentials, int tries, Duration patience, Pause pause) {
    this.outbox = outbox;
    this.credentials = credentials;
    this.tries = tries;
    this.patience = patience;
    this.pause = pause;
    HttpClient.Builder builder =
        HttpClient.newBuilder().connectTimeout(patience).followRedirects(HttpClient.Redirect.NEVER);
    credentials.addTo(builder);
    this.client = builder.build();
  }

  /** One that tries five times, and waits 20 s for an answer. */
  public static Sender patient(Outbox outbox, Credentials credentials) {
    return new Sender(
        outbox, credentials, 5, Duration.ofSeconds(20), pause -> Thread.sleep(pause.toMillis()));
  }

  /**
   * Sends letters one after the other, and tells of each what became of it.
   *
   * @return whether the server has them all
   */
  public boolean sendAll(List<Outbox.Letter> letters, PrintStream out, PrintStream err)
      throws InterruptedException {
    boolean all = true;
    for (Outbox.Letter letter : letters) {
      String identifier = PlainText.line(letter.identifier());
      try {
        send(letter);
        out.println("sent " + identifier);
      } catch (IOException e) {
        err.println(identifier + ": " + ProblemWording.of(e));
        all = false;
      }
    }
    return all;
  }

  /**
   * Sends a letter, and removes it from the outbox once the server has it.
   *
   * @throws IOException when the server refuses it or cannot be reached; a letter that is in the
   *     outbox stays there
   */
  public void send(Outbox.Letter letter) throws IOException, InterruptedException {
    HttpRequest request = request(letter);
    String trouble = "";
    Duration asked = null;
    for (int attempt = 0; attempt < tries; attempt++) {
      if (attempt > 0) {
        pause.take(asked == null ? Duration.ofSeconds(1L << Math.min(attempt - 1, 6)) : asked);
      }
      Answer answer;
      try {
        answer = exchange(request);
      } catch (IOException e) {
        asked = null;
        trouble = "no answer from " + letter.to() + " (" + reason(e) + ")";
        continue;
      }
      if (answer.isSuccess()) {
        requireFhir(answer, letter);
        outbox.remove(letter);
        return;
      }
      trouble = answer.trouble(credentials.areGiven());
      asked = answer.pause(Clock.systemUTC()).orElse(null);
      if (!answer.isPassing()) {
        throw new IOException(trouble + kept(letter));
      }
      if (asked != null && asked.compareTo(LONGEST_PAUSE) > 0) {
        throw new IOException(
            trouble + "; it asks to be tried again in " + words(asked) + kept(letter));
      }
    }
    throw new IOException(trouble + "; tried " + tries + " times" + kept(letter).replace(';', ','));
  }

  private HttpRequest request(Outbox.Letter letter) throws IOException {
    HttpRequest.Builder request =
        HttpRequest.newBuilder(Destination.parse(letter.to()).document(letter.identifier()))
            .timeout(patience)
            .header("Content-Type", "application/fhir+json; charset=UTF-8")
            .header("Accept", "application/fhir+json")
            .header("Prefer", "return=minimal")
            .PUT(HttpRequest.BodyPublishers.ofString(letter.document(), StandardCharsets.UTF_8));
    credentials.addTo(request);
    return request.build();
  }

  /** The timeout of a request ends with the headers of its answer; this one ends with the body. */
  private Answer exchange(HttpRequest request) throws IOException, InterruptedException {
    CompletableFuture<HttpResponse<byte[]>> going =
        client.sendAsync(request, head -> new BoundedBody(MOST_BYTES));
    try {
      return Answer.of(going.get(patience.toMillis(), TimeUnit.MILLISECONDS));
    } catch (TimeoutException e) {
      throw new IOException("not whole within " + patience.toSeconds() + " s", e);
    } catch (ExecutionException e) {
      throw e.getCause() instanceof IOException problem
          ? problem
          : new IOException(e.getCause().getMessage(), e.getCause());
    } finally {
      going.cancel(true);
    }
  }

  private void requireFhir(Answer answer, Outbox.Letter letter) throws IOException {
    try {
      answer.requireFhir();
    } catch (IOException e) {
      throw new IOException(e.getMessage() + kept(letter), e);
    }
  }

  private String kept(Outbox.Letter letter) {
    return outbox.holds(letter) ? "; kept in the outbox" : "; not kept to be sent: send it again";
  }

  private static String words(Duration pause) {
    return pause.toMinutes() < 2 ? pause.toSeconds() + " s" : pause.toMinutes() + " min";
  }

  private static String reason(IOException problem) {
    return problem.getMessage() == null
        ? problem.getClass().getSimpleName()
        : PlainText.line(problem.getMessage());
  }
}
