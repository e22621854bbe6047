package org.vestibule.flow;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.CaptureDeclaration;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.card.CardSheet;
import org.vestibule.card.CardSheets;
import org.vestibule.card.ViewCard;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;
import org.vestibule.words.Language;

/**
 * What a person wants on view cards, in words. All cards of one sheet say the same but for their
 * view.
 *
 * @param views each names one view
 * @param teeth null if the cards name none
 * @param mirror none, as shot or corrected; null if the cards don't say
 * @param incisors an edge of the picture as the file stores it; null if the cards don't say
 * @param stage null if the cards don't say
 */
public record ViewCardWords(
    List<String> views,
    @Nullable String teeth,
    @Nullable String mirror,
    @Nullable String incisors,
    @Nullable String stage) {

  private static final String ANY = "-";
  private static final String DIRECT = "none";

  public ViewCardWords {
    views = List.copyOf(views);
  }

  /**
   * Draws the cards.
   *
   * @param language of what people read on them
   */
  public Outcome<CardSheet> draw(Practice practice, Language language) {
    Outcome<Teeth> readTeeth =
        teeth == null ? Outcome.done(Teeth.NONE) : practice.teeth().read(teeth);
    if (!(readTeeth instanceof Done<Teeth> someTeeth)) {
      return ((Refused<Teeth>) readTeeth).as();
    }
    Outcome<CaptureDeclaration> capture =
        CaptureDeclaration.of(
            ANY, ANY, mirror == null ? DIRECT : mirror, incisors == null ? "" : incisors, ANY);
    if (!(capture instanceof Done<CaptureDeclaration> how)) {
      return ((Refused<CaptureDeclaration>) capture).as();
    }
    Stage when = null;
    if (stage != null) {
      Outcome<Stage> found = Stage.find(stage);
      if (!(found instanceof Done<Stage> done)) {
        return ((Refused<Stage>) found).as();
      }
      when = done.value();
    }
    Mirror stated = mirror == null ? null : how.value().mirror();
    return cards(practice, someTeeth.value(), stated, how.value().incisors(), when)
        .then(cards -> CardSheets.views(cards, practice.views(), language));
  }

  private Outcome<List<ViewCard>> cards(
      Practice practice,
      Teeth someTeeth,
      @Nullable Mirror stated,
      @Nullable Incisors edge,
      @Nullable Stage when) {
    List<ViewCard> cards = new ArrayList<>();
    for (String words : views) {
      Outcome<View> found = practice.views().find(words);
      if (!(found instanceof Done<View> view)) {
        return ((Refused<View>) found).as();
      }
      cards.add(
          new ViewCard(
              view.value().key(), someTeeth.isEmpty() ? null : someTeeth, stated, edge, when));
    }
    return Outcome.done(cards);
  }
}
