/**
 * What happened, in one SQLite file: arrivals, decisions, what waits, intents, objects kept,
 * corrections, events, and the numbered changes that the index consumes.
 *
 * <p>Every row has a practice id. History tables are only ever added to; triggers in the database
 * refuse anything else. Every write is one immediate transaction, on the disk when it returns.
 */
@NullMarked
package org.vestibule.store.ledger;

import org.jspecify.annotations.NullMarked;
