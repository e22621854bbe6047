package org.vestibule.web;

import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.card.LinkCode;
import org.vestibule.flow.Browse;
import org.vestibule.flow.ShareWords;
import org.vestibule.flow.Sharing;
import org.vestibule.release.Purpose;
import org.vestibule.release.Purposes;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.store.ledger.ShareRow;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** In the practice: what is shared, who came, and the page on which a link is made. */
final class Shares {

  private static final String FORTNIGHT = "14";

  private final Site site;
  private final Sharing sharing;
  private final Browse browse;

  Shares(Site site) {
    this.site = site;
    this.sharing = new Sharing(site.practice());
    this.browse = new Browse(site.practice());
  }

  /** All links, the newest first. */
  Answer page(Asked asked) {
    List<Map<String, Object>> shares = new ArrayList<>();
    for (ShareRow share : sharing.all()) {
      shares.add(0, share(share, asked));
    }
    String title = PageWords.of(asked.language()).say("shares-title");
    return Answer.page("shares", Map.of("title", title, "shares", shares));
  }

  private Map<String, Object> share(ShareRow share, Asked asked) {
    Words words = PageWords.of(asked.language());
    ReleaseRow release = sharing.release(share);
    List<ShareRow.Opening> came =
        site.practice().store().ledger().shares().openings(share.number());
    Map<String, Object> model = new HashMap<>();
    model.put("number", share.number());
    model.put("recipient", release.recipient());
    model.put("purpose", words.say("purpose-" + release.purpose()));
    model.put("who", share.who());
    model.put("photos", words.count("share-photos", share.photos().size()));
    model.put("until", words.say("share-until", day(share.endsAt(), asked)));
    model.put("open", sharing.isOpen(share));
    model.put("second", !share.secret().isEmpty());
    model.put(
        "came",
        came.stream()
            .map(
                one ->
                    Map.<String, Object>of(
                        "day", time(one.at(), asked), "client", one.client(), "fits", one.opened()))
            .toList());
    return model;
  }

  private String day(Instant moment, Asked asked) {
    return Results.days(asked.language())
        .format(moment.atZone(site.practice().settings().zone()).toLocalDate());
  }

  private String time(Instant moment, Asked asked) {
    var local = moment.atZone(site.practice().settings().zone());
    return day(moment, asked)
        + String.format(Locale.ROOT, " %02d:%02d", local.getHour(), local.getMinute());
  }

  /** The page on which a link to photographs of a visit is made. */
  Answer form(Asked asked) throws IOException {
    Optional<IndexRecord> found = site.filed(asked.path("key"));
    if (found.isEmpty()) {
      return Answers.notFound(asked);
    }
    Words words = PageWords.of(asked.language());
    Map<String, Object> model = new HashMap<>();
    model.put("title", words.say("share-title"));
    model.put("key", asked.path("key"));
    model.put("patient", found.get().who().name());
    model.put("number", found.get().who().patientId());
    model.put("alone", !site.isReachable());
    model.put("days", FORTNIGHT);
    model.put("photographs", ofVisit(found.get(), asked));
    model.put("purposes", Purposes.all().stream().map(purpose -> purpose(purpose, words)).toList());
    return Answer.page("share", model);
  }

  private static Map<String, Object> purpose(Purpose purpose, Words words) {
    return Map.of(
        "value", purpose.key(),
        "word", words.say("purpose-" + purpose.key()),
        "named", words.say(purpose.named() ? "share-named" : "share-unnamed"));
  }

  private List<Map<String, Object>> ofVisit(IndexRecord chosen, Asked asked) throws IOException {
    Words words = PageWords.of(asked.language());
    TradeWords trade = new TradeWords(words, site.practice().views());
    List<Map<String, Object>> photographs = new ArrayList<>();
    if (sharing.ofVisit(chosen.who().visitKey()) instanceof Done<List<String>> ids) {
      for (String id : ids.value()) {
        ContentHash hash = site.practice().store().ids().find(id).orThrow().hash();
        Optional<IndexRecord> record = browse.find(hash);
        if (record.isPresent()) {
          photographs.add(
              Map.of(
                  "id", id,
                  "key", site.photoKeys().of(hash),
                  "view", Results.view(record.get(), trade, words),
                  "chosen", record.get().hash().equals(chosen.hash())));
        }
      }
    }
    return photographs;
  }

  /** Makes the link and shows it, this once: only hashes of its secrets are kept. */
  Answer make(Asked asked) throws IOException {
    String days = asked.form("days");
    ShareWords words =
        new ShareWords(
            asked.form("purpose"),
            asked.forms("photo"),
            asked.form("recipient"),
            asked.form("asked-by"),
            asked.form("why"),
            asked.form("looked-by"));
    Outcome<ShareLinks.Made> made =
        site.isReachable()
            ? new ShareLinks(site.practice())
                .make(
                    words,
                    !asked.form("second").isEmpty(),
                    days.matches("\\d{1,4}") ? Integer.parseInt(days) : 0,
                    site.address(),
                    asked.visitor().person(),
                    site.secrets().next())
            : Outcome.refused(
                PageWords.of(asked.language()).say("share-alone"),
                PageWords.of(asked.language()).say("share-alone-advice"));
    if (!(made instanceof Done<ShareLinks.Made> done)) {
      Refused<ShareLinks.Made> refused = (Refused<ShareLinks.Made>) made;
      return Answer.refused(409, refused.reason(), refused.advice());
    }
    LinkCode.Drawing code = LinkCode.of(done.value().address());
    Map<String, Object> model = new HashMap<>(share(done.value().share(), asked));
    model.put("title", PageWords.of(asked.language()).say("share-made"));
    model.put("address-of-link", done.value().address());
    model.put("second-secret", done.value().second());
    model.put("path", code.path());
    model.put("side", code.side());
    return Answer.page("share-made", model);
  }

  /** Ends a link at once. */
  Answer end(Asked asked) throws IOException {
    String number = asked.path("number");
    Outcome<ShareRow> ended =
        number.matches("[1-9]\\d{0,8}")
            ? sharing.end(Integer.parseInt(number), asked.visitor().person(), asked.form("why"))
            : Outcome.refused("", "");
    return ended instanceof Done<ShareRow>
        ? Answer.to("/shares")
        : Answers.refused(asked, 409, "share-not-open");
  }
}
