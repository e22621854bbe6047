package org.vestibule.forward;

import org.vestibule.store.ledger.Ledger;
import org.vestibule.store.objects.ObjectStore;

/**
 * What a courier works with.
 *
 * @param rules of the destination
 * @param all of delivery as a whole
 * @param archive how the destination is spoken with
 * @param notes gives the notes that take objects back
 * @param who stands in the history of deliveries
 */
public record Destination(
    DestinationRules rules,
    ForwardRules all,
    Archive archive,
    Ledger ledger,
    ObjectStore objects,
    NoteSource notes,
    String who) {}
