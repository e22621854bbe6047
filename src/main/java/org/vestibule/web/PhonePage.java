package org.vestibule.web;

import java.io.IOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Done;
import org.vestibule.dental.View;
import org.vestibule.flow.Faces;
import org.vestibule.flow.VisitBook;
import org.vestibule.flow.phone.Wanted;
import org.vestibule.store.ledger.PhoneLinkRow;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** The phone's page for one visit: what is missing, how it looked before, and the files. */
final class PhonePage {

  private final Site site;
  private final PhonePages pages;
  private final Wanted wanted;
  private final Thumbnails guides;

  PhonePage(Site site, PhonePages pages) {
    this.site = site;
    this.pages = pages;
    this.wanted = new Wanted(site.practice());
    this.guides = new Thumbnails(new Faces(site.practice()));
  }

  Answer page(Asked asked) throws IOException {
    return pages.with(asked, link -> page(asked, link));
  }

  private Answer page(Asked asked, PhoneLinkRow link) throws IOException {
    Words words = PageWords.of(asked.language());
    Map<String, Object> model = new HashMap<>(missing(asked, link));
    Optional<Visit> visit = visit(link);
    model.put("title", words.say("phone-title"));
    model.put("script", "phone.js");
    model.put("page", String.valueOf(link.number()));
    model.put("name", visit.map(VisitChoice::name).orElse(link.visit()));
    model.put("number", visit.map(v -> v.patient().id()).orElse(""));
    model.put("when", visit.map(v -> VisitChoice.when(v, asked.language())).orElse(""));
    model.put("who", link.who());
    return Answer.page("phone", model);
  }

  /** The list of views alone, for the script that keeps it up to date. */
  Answer missing(Asked asked) throws IOException {
    return pages.with(asked, link -> Answer.part("phone-wanted", missing(asked, link)));
  }

  private Map<String, Object> missing(Asked asked, PhoneLinkRow link) throws IOException {
    Words words = PageWords.of(asked.language());
    TradeWords trade = new TradeWords(words, site.practice().views());
    Optional<Visit> visit = visit(link);
    List<View> views = visit.isEmpty() ? List.of() : wanted.views(visit.get(), link.series());
    List<Map<String, Object>> missing = new ArrayList<>();
    for (View view : views) {
      missing.add(view(view, trade, wanted.before(visit.orElseThrow(), view).isPresent()));
    }
    List<Map<String, Object>> others =
        site.practice().views().all().stream()
            .filter(view -> !views.contains(view))
            .map(view -> view(view, trade, false))
            .toList();
    String series = link.series();
    return Map.of(
        "wanted",
        missing,
        "others",
        others,
        "series",
        series.isEmpty() ? "" : words.say("series-" + series.replace(' ', '-')),
        "complete",
        !series.isEmpty() && views.isEmpty());
  }

  private static Map<String, Object> view(View view, TradeWords trade, boolean before) {
    return Map.of("key", view.key(), "word", trade.view(view), "before", before);
  }

  private Optional<Visit> visit(PhoneLinkRow link) {
    return new VisitBook(site.practice()).all() instanceof Done<VisitList> visits
        ? visits.value().byKey(link.visit())
        : Optional.empty();
  }

  /** The latest photograph of this view of the visit's own patient, small. */
  Answer guide(Asked asked) throws IOException {
    return pages.with(
        asked,
        link -> {
          Optional<Visit> visit = visit(link);
          Optional<View> view = site.practice().views().byKey(asked.path("view"));
          Optional<ContentHash> before =
              visit.isEmpty() || view.isEmpty()
                  ? Optional.empty()
                  : wanted.before(visit.get(), view.get());
          return before.isPresent() && guides.of(before.get()) instanceof Done<byte[]> done
              ? Answer.bytes("image/jpeg", done.value())
              : Answers.notFound(asked);
        });
  }
}
