package org.vestibule.web;

import io.javalin.Javalin;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Optional;
import java.util.concurrent.TimeoutException;
import java.util.function.Consumer;
import org.eclipse.jetty.http.BadMessageException;
import org.eclipse.jetty.io.EofException;
import org.vestibule.store.ledger.LedgerUnusableException;

/** What goes wrong outside a page, or in one, becomes a page in words. */
final class Failures {

  private static final Route ANY = Route.get("/", Role.ANYONE, Answers::notFound);

  private final Hosts hosts;
  private final Gate gate;
  private final boolean onlyByTls;
  private final Consumer<Throwable> defects;

  /**
   * @param defects told of failures that are bugs
   */
  Failures(Site site, Gate gate, Consumer<Throwable> defects) {
    this.hosts = new Hosts(site.rules());
    this.gate = gate;
    this.onlyByTls = site.trust().isPresent();
    this.defects = defects;
  }

  void register(Javalin javalin) {
    javalin.before(this::before);
    javalin.exception(HttpResponseException.class, this::refused);
    javalin.exception(BadMessageException.class, this::broken);
    javalin.exception(EofException.class, this::brokenOff);
    javalin.exception(NoMemory.class, this::crowded);
    javalin.exception(Exception.class, this::failed);
  }

  private void before(Context context) {
    Headers.set(context);
    if (!hosts.mayBe(Optional.ofNullable(context.header("Host")).orElse(""))) {
      context.skipRemainingHandlers();
      answer(context, 421, "refusal-host");
    } else if (onlyByTls
        && !context.req().isSecure()
        && !TrustPage.PLAIN.contains(context.path())) {
      context.skipRemainingHandlers();
      answer(context, 421, "refusal-plain");
    }
  }

  private void refused(HttpResponseException refusal, Context context) {
    int status = refusal.getStatus();
    answer(
        context,
        status,
        switch (status) {
          case 404 -> "refusal-not-found";
          case 405 -> "refusal-method";
          default -> "refusal-request";
        });
  }

  /** What came is no request, or came too slowly. */
  private void broken(BadMessageException request, Context context) {
    boolean slow = request.getCode() == 408;
    answer(context, slow ? 408 : 400, slow ? "refusal-slow" : "refusal-request");
  }

  /** The other end hung up in the middle; that is nobody's defect. */
  private void brokenOff(EofException end, Context context) {
    answer(context, 400, "refusal-request");
  }

  private void crowded(NoMemory failure, Context context) {
    defects.accept(failure);
    if (context.method().name().equals("GET")) {
      // What decides something may have got halfway; a person looks before it is asked again.
      Gate.later(context);
    }
    answer(context, 503, "refusal-memory");
  }

  private void failed(Exception failure, Context context) {
    if (failure instanceof IOException && failure.getCause() instanceof TimeoutException) {
      answer(context, 408, "refusal-slow");
      return;
    }
    if (failure instanceof LedgerUnusableException
        || failure instanceof IOException
        || failure instanceof UncheckedIOException) {
      defects.accept(failure);
      answer(context, 503, "refusal-machine");
      return;
    }
    defects.accept(failure);
    answer(context, 500, "refusal-defect");
  }

  private void answer(Context context, int status, String key) {
    Asked asked = gate.asked(context, ANY);
    gate.shell().write(context, asked, Answers.refused(asked, status, key));
  }
}
