package org.vestibule.web;

import java.io.IOException;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.Faces;
import org.vestibule.flow.GreyCards;
import org.vestibule.flow.Practice;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.words.Words;

/** Where a person clicks on the grey card in a photograph, and is told how true its colours are. */
final class GreyCardPage {

  /** Longer side of the picture on the page; what is clicked is counted in its pixels. */
  private static final int LONGER_SIDE = 640;

  private static final Pattern PIXEL = Pattern.compile("\\d{1,5}");
  private static final Pattern PERCENT = Pattern.compile("\\d{1,3}(\\.\\d{1,3})?");

  private final Site site;
  private final Practice practice;
  private final Faces faces;

  GreyCardPage(Site site) {
    this.site = site;
    this.practice = site.practice();
    this.faces = new Faces(practice);
  }

  private record Spot(double x, double y) {
    boolean isInside() {
      return x >= 0 && x <= 1 && y >= 0 && y <= 1;
    }
  }

  private record Shown(ContentHash photo, int width, int height, Map<String, Object> model) {}

  /** The picture, to be clicked on. */
  Answer page(Asked asked) throws IOException {
    Optional<Shown> shown = shown(asked);
    return shown.isEmpty() ? Answers.notFound(asked) : page(shown.get(), Map.of());
  }

  /** Judges the colours by what was clicked on, and says so above the picture. */
  Answer mark(Asked asked) throws IOException {
    Optional<Shown> found = shown(asked);
    if (found.isEmpty()) {
      return Answers.notFound(asked);
    }
    Shown shown = found.get();
    Words words = PageWords.of(asked.language());
    Sentences sentences = Sentences.of(asked, site);
    Optional<Spot> spot = spot(asked, shown);
    if (spot.isEmpty()) {
      return page(shown, sentences.own(words.say("grey-nothing"), words.say("grey-how"))).with(400);
    }
    Outcome<GreyCards.Marked> marked =
        new GreyCards(practice)
            .mark(
                practice.store().ids().of(shown.photo()),
                spot.get().x(),
                spot.get().y(),
                asked.visitor().person());
    if (!(marked instanceof Done<GreyCards.Marked> done)) {
      Refused<GreyCards.Marked> refused = (Refused<GreyCards.Marked>) marked;
      return page(shown, sentences.model(refused.reason(), refused.advice())).with(409);
    }
    Map<String, Object> said = sentences.model(done.value().sentence(), done.value().whatToDo());
    if (done.value().whatToDo().isEmpty()) {
      said.put("advice", "");
    }
    return page(shown, said);
  }

  /** Where was clicked; a picture that is sent by a key alone says 0, 0, which is nowhere. */
  private static Optional<Spot> spot(Asked asked, Shown shown) {
    String x = asked.form("spot.x");
    String y = asked.form("spot.y");
    String across = asked.form("across");
    String down = asked.form("down");
    if (PIXEL.matcher(x).matches() && PIXEL.matcher(y).matches()) {
      boolean nowhere = x.equals("0") && y.equals("0");
      Spot spot =
          new Spot(
              Integer.parseInt(x) / (double) shown.width(),
              Integer.parseInt(y) / (double) shown.height());
      return Optional.of(spot).filter(Spot::isInside).filter(one -> !nowhere);
    }
    if (PERCENT.matcher(across).matches() && PERCENT.matcher(down).matches()) {
      Spot spot = new Spot(Double.parseDouble(across) / 100, Double.parseDouble(down) / 100);
      return Optional.of(spot).filter(Spot::isInside);
    }
    return Optional.empty();
  }

  private Optional<Shown> shown(Asked asked) throws IOException {
    Optional<IndexRecord> record = site.filed(asked.path("key"));
    if (record.isEmpty()) {
      return Optional.empty();
    }
    ContentHash photo = new ContentHash(record.get().hash());
    if (!(faces.facts(photo) instanceof Done<Faces.Facts> facts)) {
      return Optional.empty();
    }
    double scale =
        Math.min(1, LONGER_SIDE / (double) Math.max(facts.value().width(), facts.value().height()));
    int width = Math.max(1, (int) Math.round(facts.value().width() * scale));
    int height = Math.max(1, (int) Math.round(facts.value().height() * scale));
    Pictured pictured = new Pictured(site, asked, practice.views());
    Map<String, Object> model = new HashMap<>(pictured.model(record.get(), facts.value()));
    model.put("shown-width", width);
    model.put("shown-height", height);
    model.put("title", PageWords.of(asked.language()).say("grey-title"));
    return Optional.of(new Shown(photo, width, height, model));
  }

  private static Answer page(Shown shown, Map<String, Object> said) {
    Map<String, Object> model = new HashMap<>(shown.model());
    if (!said.isEmpty()) {
      model.put("said", said);
    }
    return Answer.page("grey-card", model);
  }
}
