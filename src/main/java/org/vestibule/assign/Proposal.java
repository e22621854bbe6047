package org.vestibule.assign;

import org.jspecify.annotations.Nullable;

/**
 * What is known or likely of a photograph that waits, as a person would write it; null where
 * nothing is. Never filed by itself.
 *
 * @param visit key of the visit
 * @param patientId the patient's number
 * @param view its key
 * @param teeth marked with their notation
 * @param mirror none, as shot or corrected; likely only, unless {@code mirrorStated}
 * @param mirrorStated true if a person or a standing statement said it, false if it is merely usual
 * @param incisors the edge in the picture as the look sheet shows it
 * @param crop four fractions
 * @param accessories separated by semicolons
 * @param stage of the treatment
 * @param treatment it belongs to
 * @param note about the photograph
 */
public record Proposal(
    @Nullable String visit,
    @Nullable String patientId,
    @Nullable String view,
    @Nullable String teeth,
    @Nullable String mirror,
    boolean mirrorStated,
    @Nullable String incisors,
    @Nullable String crop,
    @Nullable String accessories,
    @Nullable String stage,
    @Nullable String treatment,
    @Nullable String note) {}
