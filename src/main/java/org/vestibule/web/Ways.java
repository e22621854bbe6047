package org.vestibule.web;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.vestibule.assign.Visit;
import org.vestibule.assign.VisitList;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.card.LinkCode;
import org.vestibule.dental.Series;
import org.vestibule.flow.VisitBook;
import org.vestibule.flow.phone.WayIn;
import org.vestibule.store.ledger.PhoneLinkRow;
import org.vestibule.store.ledger.UploadRow;
import org.vestibule.words.Words;

/** On the practice's screen: opens a phone's page for a visit, shows its code, ends it. */
final class Ways {

  private final Site site;
  private final WayIn ways;

  Ways(Site site) {
    this.site = site;
    this.ways = new WayIn(site.practice());
  }

  /** Today's visits, and the pages that are open. */
  Answer page(Asked asked) {
    Words words = PageWords.of(asked.language());
    Outcome<List<Visit>> visits = ways.visits();
    Refused<List<Visit>> refused = visits instanceof Refused<List<Visit>> trouble ? trouble : null;
    List<Visit> today = visits instanceof Done<List<Visit>> done ? done.value() : List.of();
    Map<String, Object> model = new HashMap<>();
    model.put("title", words.say("ways-title"));
    model.put("trouble", refused == null ? "" : refused.reason() + ".");
    model.put("advice", refused == null ? "" : refused.advice());
    model.put("none", today.isEmpty());
    model.put("alone", !site.isReachable());
    model.put("visits", today.stream().map(visit -> visit(visit, asked)).toList());
    model.put("series", series(words));
    model.put("open", ways.open().stream().map(link -> link(link, asked)).toList());
    return Answer.page("ways", model);
  }

  private static List<Map<String, Object>> series(Words words) {
    return Stream.of(Series.values())
        .map(
            one ->
                Map.<String, Object>of(
                    "value",
                    one.words(),
                    "word",
                    words.say("series-" + one.words().replace(' ', '-'))))
        .toList();
  }

  private static Map<String, Object> visit(Visit visit, Asked asked) {
    return Map.of(
        "key", visit.key(),
        "name", VisitChoice.name(visit),
        "number", visit.patient().id(),
        "when", VisitChoice.when(visit, asked.language()));
  }

  private Map<String, Object> link(PhoneLinkRow link, Asked asked) {
    List<UploadRow> files = site.practice().store().ledger().uploads().of(link.number());
    long here = files.stream().filter(file -> file.received() != null).count();
    Map<String, Object> model = new HashMap<>();
    model.put("number", link.number());
    model.put("who", link.who());
    model.put("files", PageWords.of(asked.language()).count("ways-files", (int) here));
    Optional<Visit> visit = visit(link);
    model.put("name", visit.map(VisitChoice::name).orElse(link.visit()));
    model.put("when", visit.map(v -> VisitChoice.when(v, asked.language())).orElse(""));
    return model;
  }

  private Optional<Visit> visit(PhoneLinkRow link) {
    return new VisitBook(site.practice()).all() instanceof Done<VisitList> visits
        ? visits.value().byKey(link.visit())
        : Optional.empty();
  }

  /** Opens a page and shows its code, this once: only a hash of its secret is kept. */
  Answer open(Asked asked) {
    String secret = site.secrets().next();
    Series series =
        Series.find(asked.form("series")) instanceof Done<Series> found ? found.value() : null;
    Outcome<PhoneLinkRow> opened =
        ways.open(asked.form("visit"), series, Secrets.mark(secret), asked.visitor().person());
    if (!(opened instanceof Done<PhoneLinkRow> done)) {
      Refused<PhoneLinkRow> refused = (Refused<PhoneLinkRow>) opened;
      return Answer.refused(409, refused.reason(), refused.advice());
    }
    String address = site.address() + "/phone#" + secret;
    LinkCode.Drawing code = LinkCode.of(address);
    Map<String, Object> model = new HashMap<>(link(done.value(), asked));
    model.put("title", PageWords.of(asked.language()).say("way-title"));
    model.put("path", code.path());
    model.put("side", code.side());
    model.put("link", address);
    model.put("alone", !site.isReachable());
    model.put(
        "trust",
        site
            .trust()
            .map(trust -> Map.of("fingerprint", trust.fingerprint(), "plain", site.trustAddress()))
            .stream()
            .toList());
    return Answer.page("way", model);
  }

  /** Ends a page at once, for every phone that has it. */
  Answer end(Asked asked) {
    String number = asked.path("number");
    if (!number.matches("[1-9]\\d{0,8}")
        || !ways.end(Integer.parseInt(number), asked.visitor().person())) {
      return Answers.refused(asked, 409, "way-not-open");
    }
    site.practice().store().ledger().sessions().endScope(Role.PHONE.word(), number);
    return Answer.to("/ways");
  }
}
