package org.vestibule.web;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The pages' templates: {@code pages/<name>.mustache}. Everything that fills one is escaped; a
 * template that would have it otherwise is refused. A value that is missing is a bug and throws; a
 * section over an empty text or list is left out.
 */
final class Templates {

  private static final String LAYOUT = "layout";

  private final Map<String, Template> whole = new ConcurrentHashMap<>();
  private final Map<String, Template> parts = new ConcurrentHashMap<>();

  /** A page of its own. */
  String page(String name, Map<String, Object> model) {
    return whole
        .computeIfAbsent(name, any -> compiler(name).compile(new StringReader(text(LAYOUT))))
        .execute(model);
  }

  /** A part of a page. */
  String part(String name, Map<String, Object> model) {
    return parts
        .computeIfAbsent(name, any -> compiler("").compile(new StringReader(text(name))))
        .execute(model);
  }

  /** In the layout, the partial {@code page} is the page. */
  private static Mustache.Compiler compiler(String page) {
    return Mustache.compiler()
        .escapeHTML(true)
        .emptyStringIsFalse(true)
        .withLoader(partial -> partial(partial, page));
  }

  private static Reader partial(String name, String page) {
    return new StringReader(text(name.equals("page") ? page : name));
  }

  /** A template's text. */
  static String text(String name) {
    String resource = "pages/" + name + ".mustache";
    try (InputStream in = Templates.class.getResourceAsStream(resource)) {
      if (in == null) {
        throw new IllegalStateException("the program lacks its resource " + resource);
      }
      String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
      if (text.contains("{{{") || text.contains("{{&") || text.contains("{{=")) {
        throw new IllegalStateException("the template " + name + " would not escape a value");
      }
      return text;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
