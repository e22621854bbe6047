package org.vestibule.quality;

/**
 * Something that could be better in a photograph. Never a reason to discard it.
 *
 * @param measured what was measured, in the unit that {@link QualityKind} states
 * @param threshold the limit that it went past, in the same unit
 * @param sentence what was found and what is usual
 * @param whatToDo what a person can do, now or next time
 */
public record QualityFinding(
    QualityKind kind, double measured, double threshold, String sentence, String whatToDo) {}
