package org.vestibule.flow;

import org.vestibule.audit.AuditPeer;

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

  AuditPeer peer() {
    String login = account.isEmpty() ? BY_OPENING_LINK : account;
    return new AuditPeer(person.isEmpty() ? login : person, account, person, client);
  }
}
