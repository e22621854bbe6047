package org.vestibule.card;

/** What stands on a card. */
public sealed interface Card permits VisitCard, ViewCard {}
