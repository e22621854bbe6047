package org.vestibule.flow;

import org.vestibule.audit.AuditPeer;
import org.vestibule.store.ledger.SessionRow;

/**
 * Who does something on the pages, as far as is known.
 *
 * @param person as they said it; empty if they did not
 * @param account by which they signed in; empty without one
 * @param client from where, by network address
 */
public record OnPages(String person, String account, String client) {

  private static final String BY_OPENING_LINK = "opening link";

  /** Whoever came by a link to shared copies. */
  static OnPages link(int share, String client) {
    return new OnPages("share " + share, "", client);
  }

  /** Whoever came by the link of a page for phones. */
  static OnPages phone(String link, String client) {
    return new OnPages("phone link " + link, "", client);
  }

  /** Whoever had this sitting; from where is not known any more. */
  static OnPages sitting(SessionRow sitting) {
    if (sitting.scope().isEmpty()) {
      return new OnPages(sitting.person(), sitting.account(), "");
    }
    return sitting.role().equals("phone")
        ? phone(sitting.scope(), "")
        : link(Integer.parseInt(sitting.scope()), "");
  }

  AuditPeer peer() {
    String login = account.isEmpty() ? BY_OPENING_LINK : account;
    return new AuditPeer(person.isEmpty() ? login : person, account, person, client);
  }
}
