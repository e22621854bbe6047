package org.vestibule.web;

import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Map;

/** What every answer says to the browser, whatever it is. */
final class Headers {

  /** Only our own files; no script and no style inside a page (CSP Level 3). */
  static final String CONTENT =
      "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:;"
          + " connect-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'";

  private static final Map<String, String> ALL = new LinkedHashMap<>();

  static {
    ALL.put("Content-Security-Policy", CONTENT);
    ALL.put("X-Content-Type-Options", "nosniff");
    ALL.put("X-Frame-Options", "DENY");
    ALL.put("Referrer-Policy", "no-referrer");
    ALL.put("Cache-Control", "no-store");
    ALL.put("Cross-Origin-Opener-Policy", "same-origin");
    ALL.put("Cross-Origin-Resource-Policy", "same-origin");
    ALL.put("Permissions-Policy", "geolocation=(), microphone=(), camera=(self)");
  }

  private Headers() {}

  static void set(Context context) {
    ALL.forEach(context::header);
  }

  /** All of them by name. */
  static Map<String, String> all() {
    return Map.copyOf(ALL);
  }
}
