package org.vestibule.forward;

import java.io.IOException;
import java.net.ConnectException;
import java.net.UnknownHostException;
import java.net.http.HttpClient;
import java.net.http.HttpConnectTimeoutException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpTimeoutException;
import java.nio.channels.UnresolvedAddressException;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.keys.TlsFailure;

/** Sends one request and reads its answer, within bounds of time and size. */
final class WebCall {

  /** An answer about one object is some hundred bytes. */
  static final int LONGEST_ANSWER = 1 << 20;

  /** What a call came to. */
  sealed interface Result {}

  /**
   * The peer answered.
   *
   * @param body at most the longest answer, unpacked; cut off if there was more
   * @param trouble why the body could not be unpacked; empty if it could
   */
  @SuppressWarnings("ArrayRecordComponent") // Read once, never compared.
  record Answer(int status, String contentType, byte[] body, boolean cutOff, String trouble)
      implements Result {
    boolean isXml() {
      return contentType.toLowerCase(Locale.ROOT).contains("xml");
    }
  }

  /**
   * It did not.
   *
   * @param connected false if nobody was there at all
   */
  record Silence(String words, String advice, boolean connected) implements Result {}

  /** RFC 6585 section 4 and RFC 9110 15.6.4: whoever says so may say for how long. */
  private static final Set<Integer> NOT_NOW = Set.of(429, 503);

  private final HttpClient client;
  private final String peer;
  private final Consumer<String> again;

  /**
   * @param peer how it is called in words
   * @param again told what stands in Retry-After of an answer that says: not now
   */
  WebCall(HttpClient client, String peer, Consumer<String> again) {
    this.client = client;
    this.peer = peer;
    this.again = again;
  }

  /**
   * Sends it.
   *
   * @param most how long all of it may take
   */
  Result send(HttpRequest request, Duration most) {
    CompletableFuture<HttpResponse<LimitedBody.Bytes>> coming =
        client.sendAsync(request, response -> new LimitedBody(LONGEST_ANSWER));
    try {
      HttpResponse<LimitedBody.Bytes> response = coming.get(most.toMillis(), TimeUnit.MILLISECONDS);
      if (NOT_NOW.contains(response.statusCode())) {
        response.headers().firstValue("Retry-After").ifPresent(again);
      }
      List<String> encodings = response.headers().allValues("Content-Encoding");
      Unpacked body = Unpacked.of(response.body(), encodings, LONGEST_ANSWER);
      return new Answer(
          response.statusCode(),
          response.headers().firstValue("Content-Type").orElse(""),
          body.bytes(),
          body.cutOff(),
          body.trouble());
    } catch (TimeoutException e) {
      coming.cancel(true);
      return late(most);
    } catch (ExecutionException e) {
      Throwable cause = e.getCause();
      boolean late =
          cause instanceof HttpTimeoutException && !(cause instanceof HttpConnectTimeoutException);
      return late ? late(most) : silence(cause == null ? e : cause);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      coming.cancel(true);
      return new Silence("the delivery was interrupted", "run it again", true);
    }
  }

  private Silence late(Duration most) {
    return new Silence(
        peer + " did not answer within " + most.toSeconds() + " seconds",
        "see whether it is overloaded; answer-seconds in the settings is how long we wait",
        true);
  }

  private Silence silence(Throwable failure) {
    if (failure instanceof IOException broken && TlsFailure.isTls(broken)) {
      Refused<?> refused = (Refused<?>) TlsFailure.refused(broken, peer);
      return new Silence(refused.reason(), refused.advice(), false);
    }
    if (failure instanceof ConnectException
        || failure instanceof HttpConnectTimeoutException
        || failure instanceof UnknownHostException
        || failure.getCause() instanceof UnresolvedAddressException) {
      return new Silence(
          peer + " can't be reached",
          "see whether it runs, and whether its address is right",
          false);
    }
    return new Silence(
        "the connection to " + peer + " broke (" + failure.getClass().getSimpleName() + ")",
        "see in the archive's log why",
        true);
  }
}
