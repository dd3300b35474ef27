package tiptoe.report.send;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Flow;

/** The body of an answer up to a limit; one that goes on behind it is an error. */
final class BoundedBody implements HttpResponse.BodySubscriber<byte[]> {
  private final int most;
  private final CompletableFuture<byte[]> body = new CompletableFuture<>();
  private final ByteArrayOutputStream bytes = new ByteArrayOutputStream();
  private Flow.Subscription subscription;

  /**
   * @param most in bytes
   */
  BoundedBody(int most) {
    this.most = most;
  }

  @Override
  public CompletionStage<byte[]> getBody() {
    return body;
  }

  @Override
  public void onSubscribe(Flow.Subscription given) {
    subscription = given;
    given.request(Long.MAX_VALUE);
  }

  @Override
  public void onNext(List<ByteBuffer> pieces) {
    for (ByteBuffer piece : pieces) {
      if (bytes.size() + piece.remaining() > most) {
        subscription.cancel();
        body.completeExceptionally(
            new IOException("an answer of more than " + (most >> 20) + " MiB"));
        return;
      }
      byte[] part = new byte[piece.remaining()];
      piece.get(part);
      bytes.writeBytes(part);
    }
  }

  @Override
  public void onError(Throwable problem) {
    body.completeExceptionally(problem);
  }

  @Override
  public void onComplete() {
    body.complete(bytes.toByteArray());
  }
}
