package org.vestibule.flow.look;

/** A labelled value, for example {@code Taken} and {@code 09:30:05}. */
public record Fact(String label, String value) {}
