package org.vestibule.store.ledger;

import org.jspecify.annotations.Nullable;

/**
 * A change that the index has to follow.
 *
 * @param id which photograph, by its content hash
 * @param record the whole new description as JSON text, or none if it is to be removed
 * @param mark 32 hexadecimal digits over this change and all before it: two ledgers that agree in
 *     number and mark have the same history
 */
public record ChangeRow(long sequence, String id, @Nullable String record, String mark) {}
