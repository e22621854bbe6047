package org.vestibule.release;

import java.nio.charset.StandardCharsets;
import java.util.Set;

/**
 * The sheet as one HTML file that needs nothing else, opens offline and runs no script. What is
 * shown can be chosen by view and on a tooth chart.
 */
final class HtmlSheet {

  private static final String STYLE =
      "body{font:16px/1.45 system-ui,sans-serif;margin:0 auto;padding:1.5rem;max-width:80rem;"
          + "color:#2b2a27;background:#faf8f3}"
          + "h1{font-size:1.5rem;font-weight:600;margin:0 0 .5rem}h1~p{margin:.2rem 0}"
          + "nav{margin:1.2rem 0 1.8rem}"
          + "input,.spoken{position:absolute;width:1px;height:1px;margin:-1px;overflow:hidden;"
          + "clip-path:inset(50%);white-space:nowrap}"
          + "label{cursor:pointer}"
          + ".views{display:flex;flex-wrap:wrap;gap:.5rem;margin:0 0 1.2rem}"
          + ".views label{border:1px solid #b9b2a3;border-radius:1rem;padding:.2rem .8rem}"
          + "ul{list-style:none;margin:0;padding:0;display:grid;gap:1.5rem;"
          + "grid-template-columns:repeat(auto-fill,minmax(17rem,1fr))}"
          + "figure{margin:0}img{width:100%;height:auto;display:block;border-radius:.3rem}"
          + ".sides{display:flex;justify-content:space-between;font-weight:600;margin:.3rem 0}"
          + "figcaption p{margin:.1rem 0}a{color:#2f5d62}";

  private HtmlSheet() {}

  /**
   * The page in UTF-8.
   *
   * @param formats the full pictures that lie beside it
   */
  static byte[] of(Sheet sheet, Set<Format> formats) {
    PageFilters filters = new PageFilters(sheet);
    StringBuilder page =
        new StringBuilder(
            "<!doctype html>\n<html lang=\""
                + sheet.words().language().tag()
                + "\">\n<head>\n<meta charset=\"utf-8\">\n");
    page.append("<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none';")
        .append(" img-src data:; style-src 'unsafe-inline'\">\n")
        .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n")
        .append("<title>")
        .append(escaped(sheet.title()))
        .append("</title>\n")
        .append("<style>")
        .append(STYLE)
        .append(ToothChart.STYLE)
        .append(filters.style())
        .append("</style>\n</head>\n<body>\n")
        .append("<h1>")
        .append(escaped(sheet.title()))
        .append("</h1>\n");
    sheet.about().forEach(line -> paragraph(page, line));
    page.append(filters.radios())
        .append("<nav aria-label=\"")
        .append(escaped(sheet.words().say("shown")))
        .append("\">\n")
        .append(filters.choices())
        .append(new ToothChart(filters, sheet.words()).html())
        .append("</nav>\n<ul>\n");
    sheet.rows().forEach(row -> row(page, row, sheet.words(), filters.classes(row), formats));
    return page.append("</ul>\n</body>\n</html>\n").toString().getBytes(StandardCharsets.UTF_8);
  }

  private static void row(
      StringBuilder page, SheetRow row, SheetWords words, String classes, Set<Format> formats) {
    page.append("<li class=\"")
        .append(classes)
        .append("\"><figure>\n<img alt=\"")
        .append(escaped(words.view(row.view())))
        .append("\" width=\"")
        .append(row.width())
        .append("\" height=\"")
        .append(row.height())
        .append("\" src=\"data:image/jpeg;base64,")
        .append(row.thumbnail())
        .append("\">\n");
    if (row.edges() == null) {
      page.append("<p class=\"sides\">")
          .append(escaped(words.say("side-unknown-line")))
          .append("</p>\n");
    } else {
      page.append("<p class=\"sides\"><span>\u2190 ")
          .append(escaped(row.left(words)))
          .append("</span><span>")
          .append(escaped(row.right(words)))
          .append(" \u2192</span></p>\n");
    }
    page.append("<figcaption>");
    paragraph(page, words.view(row.view()));
    paragraph(page, words.teeth(row.teeth()));
    paragraph(page, row.who());
    paragraph(page, words.when(row.when()));
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

  static String escaped(String text) {
    return text.replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;")
        .replace("'", "&#39;");
  }
}
