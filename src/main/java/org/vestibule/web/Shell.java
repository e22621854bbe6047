package org.vestibule.web;

import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.vestibule.flow.look.Say;
import org.vestibule.words.Language;
import org.vestibule.words.Words;

/** Puts answers into the frame that all pages share, and onto the wire. */
final class Shell {

  /** What the server's own buffer takes, whoever reads it. */
  private static final int SHORT_BYTES = 16 * 1024;

  private final Site site;
  private final Cookies cookies;
  private final Supplier<List<Route>> routes;
  private final Templates templates = new Templates();

  /**
   * @param routes all of them, for the menu
   */
  Shell(Site site, Cookies cookies, Supplier<List<Route>> routes) {
    this.site = site;
    this.cookies = cookies;
    this.routes = routes;
  }

  void write(Context context, Asked asked, Answer answer) {
    context.status(answer.status());
    String csrf = csrf(context, asked, answer);
    if (!answer.location().isEmpty()) {
      context.header("Location", answer.location());
    } else if (!answer.etag().isEmpty()) {
      ours(context, asked, answer);
    } else if (answer.template().isEmpty()) {
      bytes(context, answer);
    } else {
      context.contentType("text/html;charset=utf-8").result(html(asked, answer, csrf));
    }
  }

  /**
   * What is long is written at once, so that whoever takes it slowly counts as being answered until
   * the last byte; {@code AtOnce} holds how many do.
   */
  private static void bytes(Context context, Answer answer) {
    context.contentType(answer.type());
    if (answer.bytes().length <= SHORT_BYTES) {
      context.result(answer.bytes());
      return;
    }
    HttpServletResponse response = context.res();
    response.setContentLength(answer.bytes().length);
    try {
      response.getOutputStream().write(answer.bytes());
    } catch (IOException gone) {
      // Whoever asked has hung up, or takes nothing any more: there is nobody to tell.
    }
  }

  /** Before anybody is known, a page's forms are bound to a secret of that browser alone. */
  private String csrf(Context context, Asked asked, Answer answer) {
    String secret = answer.session();
    if (secret == null && answer.whole() && asked.visitor().csrf().isEmpty() && isForAPage(asked)) {
      secret = site.secrets().next();
    }
    if (secret == null) {
      return asked.visitor().csrf();
    }
    cookies.session(context, secret);
    return secret.isEmpty() ? "" : Secrets.csrf(secret);
  }

  /**
   * False where a browser says that it asks for a picture or for a script (Fetch Metadata): what it
   * gets then is no page, and must not take the place of a session that has begun meanwhile.
   */
  private static boolean isForAPage(Asked asked) {
    String destination = asked.header("Sec-Fetch-Dest");
    return destination.isEmpty() || destination.equals("document");
  }

  private static void ours(Context context, Asked asked, Answer answer) {
    context.header("Cache-Control", "no-cache").header("ETag", answer.etag());
    if (asked.header("If-None-Match").equals(answer.etag())) {
      context.status(304);
    } else {
      context.contentType(answer.type()).result(answer.bytes());
    }
  }

  private byte[] html(Asked asked, Answer answer, String csrf) {
    Map<String, Object> model = frame(asked, csrf);
    model.putAll(answer.model());
    if (answer.template().equals("refused")) {
      model.putAll(refusal(asked, answer.model()));
    }
    String html =
        answer.whole()
            ? templates.page(answer.template(), model)
            : templates.part(answer.template(), model);
    return html.getBytes(StandardCharsets.UTF_8);
  }

  /** A refusal in the asker's language, if it is not yet and can be. */
  private Map<String, Object> refusal(Asked asked, Map<String, Object> said) {
    if (asked.language().tag().equals(said.get("spoken"))) {
      return Map.of();
    }
    Sentences sentences = Sentences.of(asked, site);
    Sentences.Said reason = sentences.say(String.valueOf(said.get("reason")));
    Sentences.Said advice = sentences.say(String.valueOf(said.get("advice")));
    return Map.of(
        "reason", Say.capital(reason.words()),
        "spoken", reason.language(),
        "advice", Say.sentence(advice.words()),
        "spoken-advice", advice.language());
  }

  private Map<String, Object> frame(Asked asked, String csrf) {
    Words words = PageWords.of(asked.language());
    Map<String, Object> frame = new HashMap<>();
    frame.put("w", words.all());
    frame.put("language", asked.language().tag());
    frame.put("languages", languages(asked.language()));
    frame.put("csrf", csrf);
    frame.put("address", asked.address());
    frame.put("person", asked.visitor().person());
    frame.put("known", Role.PRACTICE.contains(asked.visitor().role()));
    frame.put("decides", Role.DECIDES.contains(asked.visitor().role()));
    frame.put("menu", menu(asked, words));
    frame.put("plain", false);
    frame.put("title", "");
    frame.put("script", "");
    String practice = site.practice().settings().practiceName();
    frame.put("practice", practice.isEmpty() ? words.say("practice-unnamed") : practice);
    return frame;
  }

  private static List<Map<String, Object>> languages(Language spoken) {
    return Arrays.stream(Language.values())
        .map(
            one ->
                Map.<String, Object>of(
                    "tag", one.tag(), "name", one.ownName(), "spoken", one == spoken))
        .toList();
  }

  private List<Map<String, Object>> menu(Asked asked, Words words) {
    return routes.get().stream()
        .filter(route -> !route.menu().isEmpty())
        .filter(route -> route.roles().contains(asked.visitor().role()))
        .filter(route -> asked.visitor().role() != Role.NOBODY)
        .map(
            route ->
                Map.<String, Object>of(
                    "path",
                    route.path(),
                    "word",
                    words.say(route.menu()),
                    "here",
                    route.path().equals(asked.route().path())))
        .toList();
  }
}
