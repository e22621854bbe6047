package org.vestibule.web;

import java.io.IOException;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.flow.FilingByHand;
import org.vestibule.flow.Practice;
import org.vestibule.flow.WaitingStretch;
import org.vestibule.flow.Why;
import org.vestibule.words.Words;

/**
 * What waits, and the page on which a stretch of it is labelled, or one that is filed corrected.
 */
final class Sorting {

  private final Site site;
  private final Practice practice;
  private final FilingByHand filing;
  private final VisitChoice visits;

  Sorting(Site site, VisitChoice visits) {
    this.site = site;
    this.practice = site.practice();
    this.filing = new FilingByHand(practice);
    this.visits = visits;
  }

  /** All that waits, by stretch. */
  Answer waiting(Asked asked) {
    Words words = PageWords.of(asked.language());
    SortingModel model = new SortingModel(site, asked);
    List<WaitingStretch> stretches = WaitingStretch.all(practice);
    int photos = stretches.stream().mapToInt(stretch -> stretch.photos().size()).sum();
    return Answer.page(
        "waiting",
        Map.of(
            "title", words.say("waiting-title"),
            "nothing", stretches.isEmpty(),
            "count", stretches.isEmpty() ? "" : words.count("waiting-count", photos),
            "stretches", stretches.stream().map(model::stretch).toList()));
  }

  /** The page for the stretch in which a photograph lies. */
  Answer stretch(Asked asked) {
    Optional<ContentHash> photo = site.photoKeys().find(asked.path("key"));
    if (photo.isEmpty()) {
      return Answers.notFound(asked);
    }
    Optional<WaitingStretch> stretch =
        WaitingStretch.all(practice).stream()
            .filter(one -> one.photos().stream().anyMatch(p -> p.hash().equals(photo.get())))
            .findFirst();
    if (stretch.isEmpty() || stretch.get().photos().stream().noneMatch(SortingModel::canBeSeen)) {
      return filing
          .filedBy(photo.get())
          .map(by -> Answers.refused(asked, 409, "refusal-filed-by", by.person()))
          .orElseGet(() -> Answers.notFound(asked));
    }
    SortingModel sorting = new SortingModel(site, asked);
    Map<String, Object> model = new HashMap<>(new SortingTools(site, asked).model());
    model.putAll(sorting.toLabel(stretch.get()));
    model.put("title", PageWords.of(asked.language()).say("sorting-title"));
    model.put("correcting", List.of());
    model.put("chosen", List.of());
    return Answer.page("sorting", model);
  }

  /** The page on which one that is filed is corrected. */
  Answer correcting(Asked asked) throws IOException {
    Optional<ContentHash> photo = site.photoKeys().find(asked.path("key"));
    // Read first: if another filing takes its place meanwhile, the page is refused, not the filing.
    String decision = photo.map(filing::decision).orElse("");
    Map<String, String> said = photo.map(filing::said).orElse(Map.of());
    if (photo.isEmpty() || said.isEmpty()) {
      return Answers.notFound(asked);
    }
    Words words = PageWords.of(asked.language());
    SortingModel sorting = new SortingModel(site, asked);
    Map<String, Object> model = new HashMap<>(new SortingTools(site, asked).model());
    model.putAll(sorting.filed(photo.get(), said));
    model.put("title", words.say("correcting-title"));
    model.put("chosen", visits.chosen(said.getOrDefault("visit", ""), asked).stream().toList());
    List<String> delivered = filing.deliveredTo(photo.get());
    model.put(
        "correcting",
        List.of(
            Map.of(
                "key", asked.path("key"),
                "decision", decision,
                "by", filing.filedBy(photo.get()).map(by -> by.person()).orElse(""),
                "undo", filing.canBeTakenBack(photo.get()),
                "delivered",
                    delivered.isEmpty()
                        ? ""
                        : words.say("delivered-already", String.join(", ", delivered)),
                "kinds", Why.kinds().stream().map(kind -> kind(kind, words)).toList())));
    return Answer.page("sorting", model);
  }

  private static Map<String, Object> kind(String kind, Words words) {
    return Map.of("value", kind, "word", words.find("why-" + kind).orElse(kind));
  }
}
