package org.vestibule.store.ledger;

import java.time.Instant;

/**
 * What a worklist said of a visit's order at some time.
 *
 * @param visit the visit's key
 * @param station whose worklist, an application entity's title
 * @param step scheduled procedure step id
 * @param json the order's values by DICOM keyword; empty if the worklist had it no more
 */
public record OrderRow(String visit, String station, String step, String json, Instant at) {}
