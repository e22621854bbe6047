package org.vestibule.card;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.vestibule.base.Outcome;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;
import org.vestibule.words.Language;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** Draws cards on sheets of A4 paper, lying, that two cuts part into four cards of A6. */
public final class CardSheets {

  private static final int TO_A_PAGE = 4;

  /** The same sheet has the same bytes, whenever it is drawn. */
  private static final long DOCUMENT_ID = 1;

  /** Draws one card on a part of a page. */
  private interface Face {
    void draw(CardPen pen) throws IOException;
  }

  private CardSheets() {}

  /** Visit cards, in the order given. */
  public static Outcome<CardSheet> visits(List<VisitFace> visits, Language language) {
    if (visits.isEmpty()) {
      return Outcome.refused("there is no visit to draw a card for", "name a day with visits");
    }
    Words words = words(language);
    List<Face> faces = new ArrayList<>();
    for (VisitFace visit : visits) {
      Outcome<String> text = CardText.of(new VisitCard(visit.token()));
      if (!(text instanceof Outcome.Done<String> done)) {
        return ((Outcome.Refused<String>) text).as();
      }
      Symbol symbol = Symbol.of(done.value());
      faces.add(pen -> VisitDrawing.draw(pen, symbol, visit, words));
    }
    return Outcome.done(sheet(faces));
  }

  /**
   * View cards, in the order given; refused if a view is not in the catalogue or a card says more
   * than its code can hold.
   */
  public static Outcome<CardSheet> views(
      List<ViewCard> cards, ViewCatalogue catalogue, Language language) {
    if (cards.isEmpty()) {
      return Outcome.refused("there is no view to draw a card for", "name at least one view");
    }
    Words words = words(language);
    TradeWords trade = new TradeWords(words, catalogue);
    List<Face> faces = new ArrayList<>();
    for (ViewCard card : cards) {
      View view = catalogue.byKey(card.view()).orElse(null);
      if (view == null) {
        return Outcome.refused(
            "the catalogue has no view " + card.view(), "name a view of the catalogue");
      }
      Outcome<String> text = CardText.of(card);
      if (!(text instanceof Outcome.Done<String> done)) {
        return ((Outcome.Refused<String>) text).as();
      }
      Symbol symbol = Symbol.of(done.value());
      ViewDrawing drawing = new ViewDrawing(card, trade.view(view), words, trade);
      faces.add(pen -> drawing.draw(pen, symbol));
    }
    return Outcome.done(sheet(faces));
  }

  private static Words words(Language language) {
    return Words.trade(language).and(Words.read(CardSheets.class, "words/cards", language));
  }

  private static CardSheet sheet(List<Face> faces) {
    Set<String> warnings = new LinkedHashSet<>();
    try (PDDocument document = new PDDocument()) {
      document.setDocumentId(DOCUMENT_ID);
      CardFont font = CardFont.into(document);
      for (int first = 0; first < faces.size(); first += TO_A_PAGE) {
        PDPage page = new PDPage(CardPen.A4_LYING);
        document.addPage(page);
        try (CardPen pen = new CardPen(document, page, font, warnings)) {
          pen.cutMarks();
          for (int i = first; i < Math.min(faces.size(), first + TO_A_PAGE); i++) {
            pen.place((i - first) % 2, (i - first) / 2);
            faces.get(i).draw(pen);
          }
        }
      }
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      document.save(bytes);
      return new CardSheet(bytes.toByteArray(), List.copyOf(warnings));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
