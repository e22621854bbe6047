package org.vestibule.store.ledger;

import java.time.Instant;

/**
 * One sitting at one browser.
 *
 * @param mark the hash of the secret that the browser holds
 * @param account who signed in; empty if no account stands behind it
 * @param role the room {@code web}'s word for what it may do
 * @param scope the one thing it is about, such as a share; empty if the role says all
 * @param person who sits there, as they said; empty until they did
 * @param seenAt when it was last used, to about a minute
 * @param endsAt when it ends, however much it is used
 */
public record SessionRow(
    String mark,
    String account,
    String role,
    String scope,
    String person,
    Instant begunAt,
    Instant seenAt,
    Instant endsAt) {}
