package org.vestibule.web;

import java.io.IOException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.UnaryOperator;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Kind;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.flow.FiledPhoto;
import org.vestibule.flow.FilingByHand;
import org.vestibule.flow.LookedAt;
import org.vestibule.flow.Meanwhile;
import org.vestibule.flow.Why;
import org.vestibule.words.TradeWords;
import org.vestibule.words.Words;

/** Does what a person decided: files, corrects, takes back, takes out. */
final class HandFiling {

  private static final int MOST = 200;

  private final Site site;
  private final FilingByHand filing;

  HandFiling(Site site) {
    this.site = site;
    this.filing = new FilingByHand(site.practice());
  }

  /** Files the labelled photographs of a stretch; each ends filed, or says why not. */
  Answer file(Asked asked) throws IOException {
    List<String> keys = asked.forms("photo").stream().distinct().limit(MOST).toList();
    if (keys.isEmpty() || asked.form("visit").isEmpty()) {
      return Answers.refused(asked, 400, "refusal-nothing-said");
    }
    Optional<Answer> other = otherPerson(asked);
    if (other.isPresent()) {
      return other.get();
    }
    List<Map<String, Object>> outcomes = new ArrayList<>();
    for (String key : keys) {
      outcomes.add(fileOne(asked, key));
    }
    return Answer.part("filed", Map.of("outcomes", outcomes));
  }

  private Map<String, Object> fileOne(Asked asked, String key) throws IOException {
    Optional<ContentHash> photo = site.photoKeys().find(key);
    Words words = PageWords.of(asked.language());
    if (photo.isEmpty()) {
      return refused(key, own(asked, words.say("refusal-not-found"), ""));
    }
    Optional<FilingByHand.FiledBy> before = filing.filedBy(photo.get());
    if (before.isPresent()) {
      return byAnother(key, before.get(), asked);
    }
    Outcome<FiledPhoto> filed =
        filing.file(photo.get(), Labels.decided(field(asked, key + "."), asked.visitor().person()));
    if (filed instanceof Done<FiledPhoto> done) {
      return filed(key, done.value(), asked);
    }
    Optional<FilingByHand.FiledBy> meanwhile = filing.filedBy(photo.get());
    if (meanwhile.isPresent()) {
      return byAnother(key, meanwhile.get(), asked);
    }
    Refused<FiledPhoto> refused = (Refused<FiledPhoto>) filed;
    if (refused.kind() == Kind.BUSY) {
      Map<String, Object> model =
          refused(key, own(asked, words.say("filing-busy"), words.say("filing-busy-advice")));
      model.put("state", "busy");
      return model;
    }
    return refused(key, sentences(asked).model(refused.reason(), refused.advice()));
  }

  /** The visit is said once for all of them. */
  private static UnaryOperator<String> field(Asked asked, String before) {
    return name -> asked.form(name.equals("visit") ? name : before + name);
  }

  private Map<String, Object> filed(String key, FiledPhoto photo, Asked asked) {
    TradeWords trade = new TradeWords(PageWords.of(asked.language()), site.practice().views());
    Sentences.Said remarks = sentences(asked).say(String.join("; ", photo.remarks()));
    Map<String, Object> model = outcome(key, "filed");
    model.put("view", trade.viewNamed(photo.view()));
    model.put("remarks", remarks.words());
    model.put("spoken", remarks.language());
    model.put("decision", photo.decision());
    return model;
  }

  private Sentences sentences(Asked asked) {
    return Sentences.of(asked, site);
  }

  private Map<String, Object> byAnother(String key, FilingByHand.FiledBy by, Asked asked) {
    Words words = PageWords.of(asked.language());
    Map<String, Object> model =
        refused(
            key,
            own(
                asked,
                words.say("refusal-filed-by", by.person()),
                words.say("refusal-filed-by-advice")));
    model.put("state", "elsewhere");
    return model;
  }

  private static Map<String, Object> refused(String key, Map<String, Object> said) {
    Map<String, Object> model = outcome(key, "refused");
    model.putAll(said);
    return model;
  }

  private Map<String, Object> own(Asked asked, String found, String toDo) {
    return sentences(asked).own(found, toDo);
  }

  private static Map<String, Object> outcome(String key, String state) {
    return new HashMap<>(
        Map.of(
            "key", key,
            "state", state,
            "filed", state.equals("filed"),
            "view", "",
            "decision", "",
            "remarks", "",
            "spoken", ""));
  }

  /** Corrects one that is filed. */
  Answer correct(Asked asked) throws IOException {
    return with(
        asked,
        (photo, why, seen) ->
            filing
                .move(photo, Labels.decided(asked::form, asked.visitor().person()), why, seen)
                .map(moved -> "/photograph/" + asked.path("key")));
  }

  /** Takes back what was filed by hand. */
  Answer takeBack(Asked asked) throws IOException {
    return with(
        asked,
        (photo, why, seen) ->
            filing
                .takeBack(photo, asked.visitor().person(), why, seen)
                .map(back -> "/waiting/" + asked.path("key")));
  }

  /** Takes a photograph out of search, or off the list of what waits. */
  Answer reject(Asked asked) throws IOException {
    return with(
        asked,
        (photo, why, seen) ->
            filing.reject(photo, asked.visitor().person(), why, seen).map(out -> "/waiting"));
  }

  @FunctionalInterface
  private interface Deed {
    Outcome<String> on(ContentHash photo, Why why, LookedAt seen) throws IOException;
  }

  private Answer with(Asked asked, Deed deed) throws IOException {
    Optional<ContentHash> photo = site.photoKeys().find(asked.path("key"));
    if (photo.isEmpty()) {
      return Answers.notFound(asked);
    }
    Optional<Answer> other = otherPerson(asked);
    if (other.isPresent()) {
      return other.get();
    }
    if (asked.form("why").isEmpty()) {
      return Answers.refused(asked, 400, "refusal-no-why");
    }
    String kind = asked.form("kind");
    Outcome<Why> why = Why.of(asked.form("why"), kind.isEmpty() ? null : kind);
    // Which filing the page showed; none where it showed a photograph that waits.
    LookedAt seen = LookedAt.filedBy(asked.form("decision"));
    Outcome<String> done =
        why instanceof Done<Why> said
            ? deed.on(photo.get(), said.value(), seen)
            : ((Refused<Why>) why).as();
    if (done instanceof Done<String> next) {
      return Answer.to(next.value());
    }
    Optional<Meanwhile> meanwhile = filing.since(photo.get(), seen);
    if (meanwhile.isPresent()) {
      return another(asked, meanwhile.get());
    }
    Refused<String> refused = (Refused<String>) done;
    return refused.kind() == Kind.BUSY
        ? Answers.refused(asked, 409, "filing-busy")
        : Answer.refused(409, refused.reason(), refused.advice());
  }

  /** The refusal of what somebody else said who sat here when the page was opened. */
  private static Optional<Answer> otherPerson(Asked asked) {
    String said = asked.form("person");
    String now = asked.visitor().person();
    return said.isEmpty() || said.equals(now)
        ? Optional.empty()
        : Optional.of(Answers.refused(asked, 409, "refusal-other-person", said, now));
  }

  private Answer another(Asked asked, Meanwhile found) {
    LocalDate day = found.day(site.practice().settings().zone());
    return Answers.refused(
        asked,
        409,
        "meanwhile-" + found.kind().name().toLowerCase(Locale.ROOT),
        found.who(),
        Results.days(asked.language()).format(day));
  }
}
