package org.vestibule.assign;

import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What a person says about a photograph, as they wrote it; empty where nothing was said.
 *
 * @param visit key of the visit
 * @param patient the patient's number
 * @param view in words
 * @param teeth it is about
 * @param mirror none, as shot or corrected
 * @param incisors the edge at which they lie in the picture as the look sheet shows it: turned by
 *     Exif, mirror images still mirrored
 * @param crop four fractions of that picture: left, top, right, bottom
 * @param accessories separated by ; or |
 * @param stage of the treatment
 * @param treatment it belongs to
 * @param note about the photograph
 * @param trim yes if edges that can't be turned may be dropped
 * @param by the person's name
 * @param seen true if the person looked at this very picture, not only at a list
 */
public record PersonWords(
    String visit,
    String patient,
    String view,
    String teeth,
    String mirror,
    String incisors,
    String crop,
    String accessories,
    String stage,
    String treatment,
    String note,
    String trim,
    String by,
    boolean seen) {

  /** Nothing was said. */
  public static final PersonWords NONE =
      of("", "", "", "", "", "", "", "", "", "", "", "", "", false);

  public PersonWords {
    visit = visit.strip();
    patient = patient.strip();
    view = view.strip();
    teeth = teeth.strip();
    mirror = mirror.strip();
    incisors = incisors.strip();
    crop = crop.strip();
    accessories = accessories.strip();
    stage = stage.strip();
    treatment = treatment.strip();
    note = note.strip();
    trim = trim.strip();
    by = by.strip();
  }

  /** The same with null for what was not said. */
  public static PersonWords of(
      @Nullable String visit,
      @Nullable String patient,
      @Nullable String view,
      @Nullable String teeth,
      @Nullable String mirror,
      @Nullable String incisors,
      @Nullable String crop,
      @Nullable String accessories,
      @Nullable String stage,
      @Nullable String treatment,
      @Nullable String note,
      @Nullable String trim,
      @Nullable String by,
      boolean seen) {
    return new PersonWords(
        said(visit),
        said(patient),
        said(view),
        said(teeth),
        said(mirror),
        said(incisors),
        said(crop),
        said(accessories),
        said(stage),
        said(treatment),
        said(note),
        said(trim),
        said(by),
        seen);
  }

  /** True if nothing is said about the photograph. */
  public boolean isBlank() {
    return about().allMatch(String::isEmpty);
  }

  /** True if both say the same about the photograph. */
  boolean sameFacts(PersonWords other) {
    return about().toList().equals(other.about().toList());
  }

  private Stream<String> about() {
    return List.of(
        visit,
        patient,
        view,
        teeth,
        mirror,
        incisors,
        crop,
        accessories,
        stage,
        treatment,
        note,
        trim)
        .stream();
  }

  private static String said(@Nullable String word) {
    return word == null ? "" : word;
  }
}
