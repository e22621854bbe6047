package org.vestibule.card;

/**
 * A card that opens and closes the photographs of one visit.
 *
 * @param token the visit's token, drawn by chance and kept in the ledger; it says nothing to anyone
 *     outside the practice
 */
public record VisitCard(String token) implements Card {}
