package org.vestibule.web;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.Optional;
import org.vestibule.words.Language;

/**
 * Stands before every page: who asks, whether they may, and whether a page of ours asks in their
 * name.
 */
final class Gate {

  private static final int AGAIN_IN_SECONDS = 2;

  private final Site site;
  private final Shell shell;
  private final Cookies cookies;
  private final AtOnce atOnce = new AtOnce();

  Gate(Site site, Shell shell, Cookies cookies) {
    this.site = site;
    this.shell = shell;
    this.cookies = cookies;
  }

  /** Answers at this route. */
  void handle(Context context, Route route) throws IOException {
    Asked asked = asked(context, route);
    if (!atOnce.enter(asked.visitor(), asked.client())) {
      later(context);
      shell.write(context, asked, Answers.refused(asked, 503, "refusal-busy"));
      return;
    }
    try {
      Answer answer = refusal(asked).orElse(null);
      shell.write(context, asked, answer == null ? route.page().answer(asked) : answer);
    } catch (OutOfMemoryError none) {
      // The page's own memory is free by now; the server is told of exceptions alone.
      throw new NoMemory(none);
    } finally {
      atOnce.leave(asked.visitor(), asked.client());
    }
  }

  /**
   * Nothing was begun: whoever asks again in so many seconds may be answered (RFC 9110, 10.2.3).
   */
  static void later(Context context) {
    context.header("Retry-After", String.valueOf(AGAIN_IN_SECONDS));
  }

  Shell shell() {
    return shell;
  }

  /** What was asked, for a refusal outside any route too. */
  Asked asked(Context context, Route route) {
    Visitor visitor = site.sittings().visitor(cookies.session(context));
    Language language =
        Language.of(
            cookies.language(context),
            Optional.ofNullable(context.header("Accept-Language")).orElse(""),
            site.practice().settings().language());
    return new Asked(context, route, visitor, language, client(context));
  }

  /** The last address that a trusted proxy names, else whoever is at the other end. */
  private String client(Context context) {
    String header = site.rules().proxyHeader();
    String said = header.isEmpty() ? null : context.header(header);
    if (said == null || !Hosts.isLoopback(context.ip())) {
      return context.ip();
    }
    return said.substring(said.lastIndexOf(',') + 1).strip();
  }

  private Optional<Answer> refusal(Asked asked) {
    Route route = asked.route();
    if (!route.isSafe()) {
      Optional<Answer> wrongBody = wrongBody(asked);
      if (wrongBody.isPresent()) {
        return wrongBody;
      }
    }
    if (!route.roles().contains(asked.visitor().role())) {
      return Optional.of(
          asked.visitor().role() == Role.NOBODY
              ? Entry.ask(site, asked)
              : Answers.refused(asked, 403, "refusal-role"));
    }
    if (!route.isSafe() && !proves(asked)) {
      return Optional.of(Answers.refused(asked, 403, "refusal-form"));
    }
    if (route.decides() && asked.visitor().person().isEmpty()) {
      return Optional.of(
          route.isSafe()
              ? Answer.to("/who?then=" + Then.encoded(asked.address()))
              : Answers.refused(asked, 409, "refusal-person"));
    }
    return Optional.empty();
  }

  /** A body's length has to be said beforehand, and be what the route allows. */
  private static Optional<Answer> wrongBody(Asked asked) {
    String length = asked.header("Content-Length");
    if (!length.matches("\\d{1,18}")) {
      return Optional.of(Answers.refused(asked, 411, "refusal-length"));
    }
    return Long.parseLong(length) > asked.route().mostBytes()
        ? Optional.of(Answers.refused(asked, 413, "refusal-large"))
        : Optional.empty();
  }

  private static boolean proves(Asked asked) {
    String expected = asked.visitor().csrf();
    String header = asked.header("X-Vestibule-Form");
    String said =
        header.isEmpty() && asked.route().method().equals("POST") ? asked.form("form") : header;
    return !expected.isEmpty() && Secrets.same(expected, said);
  }
}
