package org.vestibule.flow;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import org.vestibule.audit.AuditOutcome;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome.Done;
import org.vestibule.release.Purpose;
import org.vestibule.release.Purposes;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.ledger.PhoneLinkRow;
import org.vestibule.store.ledger.ReleaseRow;
import org.vestibule.store.ledger.SessionRow;
import org.vestibule.store.ledger.ShareRow;

/** Tells the site's audit repository who came to the pages, and what they looked at there. */
public final class PageAudit {

  private final Auditing audit;
  private final Ledger ledger;

  public PageAudit(Practice practice) {
    this.audit = practice.audit();
    this.ledger = practice.store().ledger();
  }

  /** Somebody signed in. */
  public void signedIn(OnPages who) throws IOException {
    audit.login(who.peer(), true, AuditOutcome.SUCCESS, "");
  }

  /**
   * Somebody tried to come in, and was not let in.
   *
   * @param words why, without what was typed
   */
  public void refused(OnPages who, String words) throws IOException {
    audit.login(who.peer(), true, AuditOutcome.SERIOUS_FAILURE, words);
  }

  /** Somebody signed out. */
  public void signedOut(OnPages who) throws IOException {
    audit.login(who.peer(), false, AuditOutcome.SUCCESS, "");
  }

  /** A sitting was not used for long, or lasted as long as one may; told when it is noticed. */
  public void ranOut(SessionRow sitting) {
    try {
      audit.login(OnPages.sitting(sitting).peer(), false, AuditOutcome.SUCCESS, "ended by itself");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** A phone came by a link that is open. */
  public void opened(PhoneLinkRow page, String client) throws IOException {
    signedIn(OnPages.phone(String.valueOf(page.number()), client));
  }

  /** Somebody looked at a photograph. */
  public void looked(ContentHash photo, OnPages who) throws IOException {
    if (audit.trail().isOn()) {
      audit.accessed(ledger.intents().current(photo), 'R', false, who.peer());
    }
  }

  /** Somebody came by a link, and sees the copies behind it. */
  public void opened(ShareRow share, String client) throws IOException {
    if (!audit.trail().isOn()) {
      return;
    }
    OnPages link = OnPages.link(share.number(), client);
    signedIn(link);
    ReleaseRow release = ledger.releases().find(share.release()).orElseThrow();
    List<Intent> behind =
        release.items().stream()
            .map(item -> ledger.intents().find(item.sopUid()))
            .flatMap(Optional::stream)
            .toList();
    boolean named =
        Purposes.find(release.purpose()) instanceof Done<Purpose> purpose
            && purpose.value().named();
    audit.accessed(behind, 'R', !named, link.peer());
  }

  /** Somebody came with a link that is open, and with a wrong second secret. */
  public void refused(ShareRow share, String client) throws IOException {
    refused(OnPages.link(share.number(), client), "wrong second secret");
  }
}
