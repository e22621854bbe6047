package org.vestibule.store.ledger;

import java.time.Instant;

/**
 * Somebody, or some device of the practice, that may use the pages.
 *
 * @param name what is typed to sign in
 * @param role the room {@code web}'s word for what it may do
 * @param password a hash that tells how it was made, never the password
 * @param addedBy who let it in
 */
public record AccountRow(String name, String role, String password, String addedBy, Instant at) {}
