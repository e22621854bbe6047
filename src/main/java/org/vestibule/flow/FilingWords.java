package org.vestibule.flow;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a person says about a photograph, in their own words; null where nothing was said.
 *
 * @param visit key of the visit
 * @param patient the patient's number
 * @param view the view in words
 * @param teeth the teeth it is about
 * @param mirror "none", "as shot" or "corrected"
 * @param incisors where the incisors lie as the sheet shows the picture
 * @param crop four fractions of the picture as the sheet shows it: left, top, right, bottom
 * @param accessories what may be in the picture
 * @param stage of the treatment
 * @param treatment it belongs to
 * @param note about the photograph
 * @param trim true if edges that can't be turned may be dropped
 */
public record FilingWords(
    @Nullable String visit,
    @Nullable String patient,
    @Nullable String view,
    @Nullable String teeth,
    @Nullable String mirror,
    @Nullable String incisors,
    @Nullable String crop,
    List<String> accessories,
    @Nullable String stage,
    @Nullable String treatment,
    @Nullable String note,
    boolean trim) {

  public FilingWords {
    accessories = List.copyOf(accessories);
  }
}
