package org.vestibule.forward;

import java.io.ByteArrayOutputStream;
import java.net.http.HttpResponse;
import java.nio.ByteBuffer;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.Flow;
import org.jspecify.annotations.Nullable;

/** Takes an answer's body up to a limit; a peer that sends more is cut off. */
final class LimitedBody implements HttpResponse.BodySubscriber<LimitedBody.Bytes> {

  /** What was read. */
  @SuppressWarnings("ArrayRecordComponent") // Read once, never compared.
  record Bytes(byte[] bytes, boolean cutOff) {}

  private final int limit;
  private final ByteArrayOutputStream read = new ByteArrayOutputStream();
  private final CompletableFuture<Bytes> result = new CompletableFuture<>();
  private Flow.@Nullable Subscription subscription;

  LimitedBody(int limit) {
    this.limit = limit;
  }

  @Override
  public CompletionStage<Bytes> getBody() {
    return result;
  }

  @Override
  public void onSubscribe(Flow.Subscription coming) {
    subscription = coming;
    coming.request(Long.MAX_VALUE);
  }

  @Override
  public void onNext(List<ByteBuffer> buffers) {
    for (ByteBuffer buffer : buffers) {
      int room = limit - read.size();
      byte[] bytes = new byte[Math.min(room, buffer.remaining())];
      boolean more = buffer.remaining() > room;
      buffer.get(bytes);
      read.writeBytes(bytes);
      if (more && !result.isDone()) {
        result.complete(new Bytes(read.toByteArray(), true));
        Flow.Subscription open = subscription;
        if (open != null) {
          open.cancel();
        }
      }
    }
  }

  @Override
  public void onError(Throwable failure) {
    result.completeExceptionally(failure);
  }

  @Override
  public void onComplete() {
    result.complete(new Bytes(read.toByteArray(), false));
  }
}
