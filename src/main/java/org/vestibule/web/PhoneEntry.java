package org.vestibule.web;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import org.vestibule.flow.OnPages;
import org.vestibule.flow.PageAudit;
import org.vestibule.flow.phone.WayIn;
import org.vestibule.store.ledger.PhoneLinkRow;

/** A phone comes with the secret of its code and gets a session for that one visit. */
final class PhoneEntry {

  private static final int MOST_FOR_A_CLIENT = 30;

  private final Site site;
  private final PageAudit audit;
  private final WayIn ways;
  private final Attempts attempts;

  PhoneEntry(Site site) {
    this.site = site;
    this.audit = new PageAudit(site.practice());
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
  Answer opened(Asked asked) throws IOException {
    if (attempts.tooMany(asked.client())) {
      return Answers.refused(asked, 429, "refusal-attempts");
    }
    String secret = asked.form("secret");
    Optional<PhoneLinkRow> link =
        Secrets.isOne(secret) ? ways.find(Secrets.mark(secret)) : Optional.empty();
    if (link.isEmpty()) {
      attempts.failed(asked.client());
      audit.refused(new OnPages("", "unknown phone link", asked.client()), "unknown phone link");
      return form(asked, PageWords.of(asked.language()).say("phone-open-wrong")).with(403);
    }
    audit.opened(link.get(), asked.client());
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
