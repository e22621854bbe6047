package org.vestibule.flow.look;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;

/**
 * Writes a sheet as one HTML page that needs nothing else: styles and pictures are inside, there is
 * no script, and a content security policy forbids the page to load anything. Pictures are drawn as
 * the page grows.
 */
public final class SheetWriter {

  /** By this a file is known to be a sheet that may be replaced. */
  static final String SIGNATURE = "<meta name=\"generator\" content=\"Vestibule sheet\">";

  private static final String POLICY =
      "default-src 'none'; img-src data:; style-src 'unsafe-inline'; base-uri 'none'; form-action"
          + " 'none'";

  /** Cards in a row of a wide page, as the style has it. */
  private static final int WHOLE_ROW = 4;

  private final Appendable out;

  private SheetWriter(Appendable out) {
    this.out = out;
  }

  /** Writes the whole page. */
  public static void write(Sheet sheet, Appendable out) throws IOException {
    SheetWriter writer = new SheetWriter(out);
    writer.head(sheet);
    writer.masthead(sheet);
    writer.contents(sheet.sections());
    writer.line("<main id=\"main\">");
    List<Callable<Outcome<Thumbnail>>> jobs =
        sheet.sections().stream()
            .flatMap(section -> section.cards().stream())
            .map(Card::picture)
            .filter(Objects::nonNull)
            .<Callable<Outcome<Thumbnail>>>map(picture -> picture::draw)
            .toList();
    try (Ahead<Outcome<Thumbnail>> pictures = new Ahead<>(jobs)) {
      for (int i = 0; i < sheet.sections().size(); i++) {
        writer.section(sheet.sections().get(i), i + 1, pictures);
      }
    }
    writer.glossary(sheet);
    writer.line("</main>");
    writer.line("<footer><p>" + Html.text(sheet.closing()) + "</p></footer>");
    writer.line("</body>\n</html>");
  }

  private void head(Sheet sheet) throws IOException {
    line("<!DOCTYPE html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">");
    line(SIGNATURE);
    line("<meta http-equiv=\"Content-Security-Policy\" content=\"" + POLICY + "\">");
    line("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">");
    line("<meta name=\"referrer\" content=\"no-referrer\">");
    line("<meta name=\"robots\" content=\"noindex, noarchive\">");
    line("<title>" + Html.text(sheet.title()) + "</title>");
    line("<style>\n" + style() + "</style>\n</head>\n<body>");
    line("<a class=\"skip\" href=\"#main\">To the photographs</a>");
  }

  private void masthead(Sheet sheet) throws IOException {
    line("<header>\n<h1>" + Html.text(sheet.title()) + "</h1>");
    line("<p class=\"lead\">" + Html.text(sheet.lead()) + "</p>");
    if (!sheet.tallies().isEmpty()) {
      line("<ul class=\"tallies\">");
      for (Tally tally : sheet.tallies()) {
        line(
            "<li class=\""
                + tally.tone().styleName()
                + "\"><strong>"
                + Html.text(tally.number())
                + "</strong> <span>"
                + Html.text(tally.words())
                + "</span></li>");
      }
      line("</ul>");
    }
    line("<p class=\"caution\" role=\"note\">" + Html.text(sheet.caution()) + "</p>\n</header>");
  }

  private void contents(List<SheetSection> sections) throws IOException {
    if (sections.size() < 2) {
      return;
    }
    line("<nav aria-label=\"Contents\"><ol>");
    for (int i = 0; i < sections.size(); i++) {
      SheetSection section = sections.get(i);
      line(
          "<li><a href=\"#part-"
              + (i + 1)
              + "\">"
              + Html.text(section.heading())
              + "</a> <span class=\"count\">"
              + section.cards().size()
              + "</span></li>");
    }
    line("</ol></nav>");
  }

  private void section(SheetSection section, int number, Ahead<Outcome<Thumbnail>> pictures)
      throws IOException {
    String id = "part-" + number;
    line(
        "<section id=\""
            + id
            + "\" class=\""
            + width(section)
            + "\" aria-labelledby=\""
            + id
            + "-h\">");
    line("<h2 id=\"" + id + "-h\">" + Html.text(section.heading()) + "</h2>");
    if (!section.lead().isEmpty()) {
      line("<p class=\"sub\">" + Html.text(section.lead()) + "</p>");
    }
    line("<div class=\"" + (section.hasPictures() ? "cards" : "lines") + "\">");
    for (Card card : section.cards()) {
      card(card, card.picture() == null ? null : pictures.next());
    }
    line("</div>\n</section>");
  }

  /** Small groups share a row of the page. */
  private static String width(SheetSection section) {
    return section.hasPictures() && section.cards().size() < WHOLE_ROW
        ? "of-" + section.cards().size()
        : "whole";
  }

  private void card(Card card, @Nullable Outcome<Thumbnail> picture) throws IOException {
    line("<article>");
    if (picture != null) {
      picture(card, picture);
    }
    line("<div class=\"text\">\n<h3><bdi>" + breakable(card.title()) + "</bdi></h3>");
    if (!card.marks().isEmpty()) {
      line(
          card.marks().stream()
              .map(
                  mark ->
                      "<li class=\""
                          + mark.tone().styleName()
                          + "\">"
                          + Html.text(mark.words())
                          + "</li>")
              .collect(Collectors.joining("", "<ul class=\"marks\">", "</ul>")));
    }
    facts(card.facts());
    for (String note : card.notes()) {
      line("<p class=\"note\">" + Html.text(note) + "</p>");
    }
    line("</div>\n</article>");
  }

  /** A name that may be broken after a folder. */
  private static String breakable(String name) {
    return Html.text(name).replace("/", "/<wbr>");
  }

  private void picture(Card card, Outcome<Thumbnail> outcome) throws IOException {
    if (outcome instanceof Outcome.Done<Thumbnail> done) {
      Thumbnail picture = done.value();
      line(
          "<figure><img src=\""
              + Html.text(picture.dataUri())
              + "\" width=\""
              + picture.width()
              + "\" height=\""
              + picture.height()
              + "\" alt=\"Photograph "
              + Html.text(card.title())
              + "\"></figure>");
    } else if (outcome instanceof Outcome.Refused<Thumbnail> refused) {
      line(
          "<figure class=\"none\"><p>It can't be shown: "
              + Html.text(refused.reason())
              + "</p></figure>");
    }
  }

  private void facts(List<Fact> facts) throws IOException {
    if (facts.isEmpty()) {
      return;
    }
    line("<dl>");
    for (Fact fact : facts) {
      line(
          "<div><dt>"
              + Html.text(fact.label())
              + "</dt><dd>"
              + Html.text(fact.value())
              + "</dd></div>");
    }
    line("</dl>");
  }

  private void glossary(Sheet sheet) throws IOException {
    if (sheet.glossary().isEmpty()) {
      return;
    }
    line("<section class=\"glossary whole\" aria-labelledby=\"glossary-h\">");
    line("<h2 id=\"glossary-h\">" + Html.text(sheet.glossaryHeading()) + "</h2>");
    facts(sheet.glossary());
    line("</section>");
  }

  private void line(String text) throws IOException {
    out.append(text).append('\n');
  }

  private static String style() {
    try (InputStream in = SheetWriter.class.getResourceAsStream("sheet.css")) {
      if (in == null) {
        throw new IllegalStateException("the program's own file sheet.css is missing");
      }
      return new String(in.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException e) {
      throw new UncheckedIOException("the program's own file sheet.css can't be read", e);
    }
  }
}
