package org.vestibule.web;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.vestibule.flow.phone.WayIn;
import org.vestibule.store.ledger.PhoneLinkRow;

/** A phone comes with the secret of its code and gets a session for that one visit. */
final class PhoneEntry {

  private static final int MOST_FOR_A_CLIENT = 30;

  private final Site site;
  private final WayIn ways;
  private final Attempts attempts;

  PhoneEntry(Site site) {
    this.site = site;
    this.ways = new WayIn(site.practice());
    this.attempts =
        new Attempts(MOST_FOR_A_CLIENT, Duration.ofMinutes(10), site.practice().clock());
  }

  Answer page(Asked asked) {
    return form(asked, "");
  }

  private static Answer form(Asked asked, String wrong) {
    String title = PageWords.of(asked.language()).say("phone-open-title");
    return Answer.page(
        "phone-open", Map.of("title", title, "script", "phone-open.js", "wrong", wrong));
  }

  /** Unknown, ended and past: the answer is the same. */
  Answer opened(Asked asked) {
    if (attempts.tooMany(asked.client())) {
      return Answers.refused(asked, 429, "refusal-attempts");
    }
    String secret = asked.form("secret");
    Optional<PhoneLinkRow> link =
        Secrets.isOne(secret) ? ways.find(Secrets.mark(secret)) : Optional.empty();
    if (link.isEmpty()) {
      attempts.failed(asked.client());
      return form(asked, PageWords.of(asked.language()).say("phone-open-wrong")).with(403);
    }
    Instant now = site.practice().clock().instant();
    site.sittings().end(asked.visitor());
    return Answer.to("/phone/visit")
        .beginning(
            site.sittings()
                .begin(
                    "",
                    Role.PHONE,
                    String.valueOf(link.get().number()),
                    link.get().who(),
                    Duration.between(now, link.get().endsAt())));
  }
}
