package org.vestibule.quality;

/**
 * Something that was not measured in a photograph: silence about it is not praise.
 *
 * @param reason why not, as a sentence
 */
public record Unmeasured(QualityKind kind, String reason) {}
