package org.vestibule.flow.look;

/** A number at the head of a sheet and what it counts. */
public record Tally(String number, String words, Tone tone) {}
