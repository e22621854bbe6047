package org.vestibule.web;

import java.io.IOException;
import java.time.Duration;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import org.vestibule.flow.OnPages;
import org.vestibule.flow.PageAudit;
import org.vestibule.flow.Sharing;
import org.vestibule.store.ledger.ShareRow;

/** Somebody outside comes with a link's secret, and with the second one where it is asked. */
final class SharedEntry {

  private static final int MOST_FOR_A_CLIENT = 30;
  private static final int MOST_FOR_A_LINK = 5;
  private static final int LONGEST_SECOND = 100;
  private static final Duration WITHIN = Duration.ofMinutes(10);

  private final Site site;
  private final Sharing sharing;
  private final Attempts byClient;
  private final Attempts byLink;
  private final PageAudit audit;

  /** Each check of a second secret takes 19 MiB and a moment. */
  private final Semaphore checks = new Semaphore(2);

  SharedEntry(Site site) {
    this.site = site;
    this.sharing = new Sharing(site.practice());
    this.byClient = new Attempts(MOST_FOR_A_CLIENT, WITHIN, site.practice().clock());
    this.byLink = new Attempts(MOST_FOR_A_LINK, WITHIN, site.practice().clock());
    this.audit = new PageAudit(site.practice());
  }

  Answer page(Asked asked) {
    return form(asked, "shared-open", "", "");
  }

  private static Answer form(Asked asked, String template, String secret, String wrong) {
    String title = PageWords.of(asked.language()).say("shared-title");
    String script = template.equals("shared-open") ? "open.js" : "";
    return Answer.page(
        template, Map.of("title", title, "script", script, "secret", secret, "wrong", wrong));
  }

  /** Unknown, ended, past, taken back: the answer is the same. */
  Answer opened(Asked asked) throws IOException {
    if (byClient.tooMany(asked.client())) {
      return Answers.refused(asked, 429, "refusal-attempts");
    }
    String secret = asked.form("secret");
    Optional<ShareRow> share =
        Secrets.isOne(secret) ? sharing.find(Secrets.mark(secret)) : Optional.empty();
    if (share.isEmpty()) {
      byClient.failed(asked.client());
      audit.refused(new OnPages("unknown link", "", asked.client()), "no open link");
      return Answers.refused(asked, 403, "shared-nothing");
    }
    boolean asks = !share.get().secret().isEmpty();
    if (asks && asked.form("second").isEmpty()) {
      return form(asked, "shared-second", secret, "");
    }
    return asks ? withSecond(asked, share.get(), secret) : let(asked, share.get());
  }

  private Answer withSecond(Asked asked, ShareRow share, String secret) throws IOException {
    String link = String.valueOf(share.number());
    String second = asked.form("second");
    if (second.length() > LONGEST_SECOND || byLink.tooMany(link) || !checks.tryAcquire()) {
      return Answers.refused(asked, 429, "refusal-attempts");
    }
    try {
      if (!sharing.comes(share, second, asked.client())) {
        byLink.failed(link);
        audit.refused(share, asked.client());
        String wrong = PageWords.of(asked.language()).say("shared-second-wrong");
        return form(asked, "shared-second", secret, wrong).with(403);
      }
    } finally {
      checks.release();
    }
    byLink.succeeded(link);
    return session(asked, share);
  }

  private Answer let(Asked asked, ShareRow share) throws IOException {
    sharing.comes(share, "", asked.client());
    return session(asked, share);
  }

  private Answer session(Asked asked, ShareRow share) throws IOException {
    audit.opened(share, asked.client());
    site.sittings().end(asked.visitor());
    Duration left = Duration.between(site.practice().clock().instant(), share.endsAt());
    Duration longest = site.rules().longest();
    return Answer.to("/shared/photographs")
        .beginning(
            site.sittings()
                .begin(
                    "",
                    Role.REFERRER,
                    String.valueOf(share.number()),
                    "",
                    left.compareTo(longest) < 0 ? left : longest));
  }
}
