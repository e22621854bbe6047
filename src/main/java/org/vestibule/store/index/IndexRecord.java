package org.vestibule.store.index;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * How a photograph is described for searching and for a line of results. Text that is not known is
 * empty.
 *
 * @param hash content hash of the camera's file
 * @param id what people call the photograph by
 * @param filed false while it waits for a person
 * @param objectUid SOP Instance UID of the object that is its face (the crop if there is one)
 * @param takenAt local date and time
 * @param device camera in words
 * @param advice keys of what could be better about the picture, such as {@code blur}
 */
public record IndexRecord(
    String hash,
    String id,
    boolean filed,
    @Nullable String objectUid,
    @Nullable LocalDateTime takenAt,
    Who who,
    Shows shows,
    String device,
    String treatment,
    String note,
    List<String> advice) {

  public IndexRecord {
    advice = List.copyOf(advice);
  }

  /** The same with other advice. */
  public IndexRecord with(List<String> other) {
    return new IndexRecord(
        hash, id, filed, objectUid, takenAt, who, shows, device, treatment, note, other);
  }

  /** A photograph about which nothing could be better, or which was not looked at. */
  public IndexRecord(
      String hash,
      String id,
      boolean filed,
      @Nullable String objectUid,
      @Nullable LocalDateTime takenAt,
      Who who,
      Shows shows,
      String device,
      String treatment,
      String note) {
    this(hash, id, filed, objectUid, takenAt, who, shows, device, treatment, note, List.of());
  }

  /**
   * Whose photograph it is.
   *
   * @param name for people, not DICOM text
   */
  public record Who(
      String patientId,
      String issuer,
      String name,
      String referrer,
      String dentist,
      String accession,
      String visitKey,
      @Nullable LocalDate visitDate) {

    /** Nobody is known. */
    public static final Who NOBODY = new Who("", "", "", "", "", "", "", null);
  }

  /**
   * What it shows.
   *
   * @param viewKey key of the view catalogue
   * @param viewName name of the view for people
   * @param teethWords the named teeth in words
   * @param teeth ISO 3950 numbers of the teeth that a person named
   * @param occupants what a person said stands at a position, such as {@code 36 implant}
   * @param areas ISO 3950 codes of the areas that a person named
   * @param usual teeth that are usually in frame: a hint
   * @param mirror {@code none}, {@code as-shot}, {@code corrected} or {@code unknown}
   * @param stage {@code before}, {@code follow-up} and so on
   * @param accessories keys of the accessory catalogue
   */
  public record Shows(
      String viewKey,
      String viewName,
      String teethWords,
      List<Integer> teeth,
      List<String> occupants,
      List<String> areas,
      UsualFrame usual,
      String mirror,
      String stage,
      List<String> accessories) {

    public Shows {
      teeth = List.copyOf(teeth);
      occupants = List.copyOf(occupants);
      areas = List.copyOf(areas);
      accessories = List.copyOf(accessories);
    }
  }

  /** The day it was taken, else the day of the visit. */
  public @Nullable LocalDate day() {
    return takenAt != null ? takenAt.toLocalDate() : who.visitDate();
  }
}
