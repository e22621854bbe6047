package org.vestibule.flow;

/**
 * A photograph of a card: kept where it is, and never filed.
 *
 * @param id the photograph's
 * @param name the file's
 * @param sentence what it is
 */
public record Aside(String id, String name, String sentence) {}
