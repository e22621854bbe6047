package org.vestibule.flow.look;

/** A word or two on a card that the eye should find. */
public record Mark(String words, Tone tone) {}
