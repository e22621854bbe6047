package org.vestibule.release;

import java.nio.charset.StandardCharsets;
import java.util.Set;

/** The sheet as one HTML file that needs nothing else, opens offline and runs no script. */
final class HtmlSheet {

  private static final String STYLE =
      "body{font:16px/1.4 system-ui,sans-serif;margin:1.5rem;color:#222;background:#fff}"
          + "ul{list-style:none;margin:0;padding:0;display:grid;gap:1.5rem;"
          + "grid-template-columns:repeat(auto-fill,minmax(17rem,1fr))}"
          + "figure{margin:0}img{width:100%;height:auto;display:block}"
          + ".sides{display:flex;justify-content:space-between;font-weight:600}"
          + "figcaption p{margin:.1rem 0}";

  private HtmlSheet() {}

  /**
   * The page in UTF-8.
   *
   * @param formats the full pictures that lie beside it
   */
  static byte[] of(Sheet sheet, Set<Format> formats) {
    StringBuilder page =
        new StringBuilder(
            "<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n");
    page.append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';")
        .append(" img-src data:; style-src 'unsafe-inline'\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<title>")
        .append(escaped(sheet.title()))
        .append("</title>\n")
        .append("<style>")
        .append(STYLE)
        .append("</style>\n</head>\n<body>\n")
        .append("<h1>")
        .append(escaped(sheet.title()))
        .append("</h1>\n");
    sheet.about().forEach(line -> paragraph(page, line));
    page.append("<ul>\n");
    sheet.rows().forEach(row -> row(page, row, formats));
    return page.append("</ul>\n</body>\n</html>\n").toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void row(StringBuilder page, SheetRow row, Set<Format> formats) {
    page.append("<li><figure>\n<img alt=\"")
        .append(escaped(row.view()))
        .append("\" width=\"")
        .append(row.width())
        .append("\" height=\"")
        .append(row.height())
        .append("\" src=\"data:image/jpeg;base64,")
        .append(row.thumbnail())
        .append("\">\n");
    if (row.edges() == null) {
      page.append("<p class=\"sides\">Side not known</p>\n");
    } else {
      page.append("<p class=\"sides\"><span>\u2190 ")
          .append(escaped(row.left()))
          .append("</span><span>")
          .append(escaped(row.right()))
          .append(" \u2192</span></p>\n");
    }
    page.append("<figcaption>");
    paragraph(page, row.view());
    paragraph(page, row.teeth());
    paragraph(page, row.who());
    paragraph(page, row.when());
    for (Format format : Format.values()) {
      if (formats.contains(format)) {
        String file = ReleaseFiles.picture(row.name(), format);
        page.append("<p><a href=\"").append(file).append("\">").append(file).append("</a></p>");
      }
    }
    page.append("</figcaption>\n</figure></li>\n");
  }

  private static void paragraph(StringBuilder page, String text) {
    if (!text.isEmpty()) {
      page.append("<p>").append(escaped(text)).append("</p>");
    }
  }

  private static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }
}
