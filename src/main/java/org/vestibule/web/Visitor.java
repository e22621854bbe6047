package org.vestibule.web;

import java.util.Optional;
import org.vestibule.store.ledger.SessionRow;

/**
 * Who is asking, as far as is known.
 *
 * @param csrf what a page of ours puts into its forms, so that no other page can ask in its name
 */
record Visitor(Role role, Optional<SessionRow> session, String csrf) {

  /** Who sits there, as they said; empty if they did not. */
  String person() {
    return session.map(SessionRow::person).orElse("");
  }

  String account() {
    return session.map(SessionRow::account).orElse("");
  }

  /** The one thing that the session is about. */
  String scope() {
    return session.map(SessionRow::scope).orElse("");
  }
}
