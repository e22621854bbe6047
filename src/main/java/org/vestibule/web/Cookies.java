package org.vestibule.web;

import io.javalin.http.Context;
import io.javalin.http.Cookie;
import io.javalin.http.SameSite;
import java.util.Optional;
import org.vestibule.words.Language;

/**
 * What the browser holds for us: the session's secret, and the language that was chosen. By TLS the
 * secret's name begins with {@code __Host-}, so that no other host can set it (RFC 6265bis, 4.1.3).
 */
final class Cookies {

  private static final String LANGUAGE = "vestibule-language";
  private static final int YEAR_SECONDS = 365 * 24 * 3600;

  private final boolean secure;
  private final String session;

  Cookies(boolean secure) {
    this.secure = secure;
    this.session = secure ? "__Host-vestibule" : "vestibule";
  }

  /** The secret that the browser holds, or empty. */
  String session(Context context) {
    return Optional.ofNullable(context.cookie(session)).orElse("");
  }

  String language(Context context) {
    return Optional.ofNullable(context.cookie(LANGUAGE)).orElse("");
  }

  /** Hands the secret over until the browser is closed; an empty one is taken back. */
  void session(Context context, String secret) {
    context.cookie(cookie(session, secret, secret.isEmpty() ? 0 : -1, secure));
  }

  /** It is no secret, and by TLS or not the same. */
  static void language(Context context, Language language) {
    context.cookie(cookie(LANGUAGE, language.tag(), YEAR_SECONDS, false));
  }

  private static Cookie cookie(String name, String value, int maxAge, boolean secure) {
    Cookie cookie = new Cookie(name, value);
    cookie.setPath("/");
    cookie.setMaxAge(maxAge);
    cookie.setHttpOnly(true);
    cookie.setSecure(secure);
    cookie.setSameSite(SameSite.STRICT);
    return cookie;
  }
}
