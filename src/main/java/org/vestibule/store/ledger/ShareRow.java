package org.vestibule.store.ledger;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Copies that are shown behind a link.
 *
 * @param mark the hash of the link's secret
 * @param release the release whose copies they are
 * @param secret the hash of the second secret; empty without one
 * @param who made the link
 * @param ended by whom and why; null if nobody ended it
 */
public record ShareRow(
    int number,
    String mark,
    String release,
    String secret,
    String who,
    Instant at,
    Instant endsAt,
    List<Photo> photos,
    @Nullable End ended) {

  public ShareRow {
    photos = List.copyOf(photos);
  }

  /** True if it may be opened at this moment. */
  public boolean isOpen(Instant now) {
    return ended == null && now.isBefore(endsAt);
  }

  /**
   * What is shown of one copy; nothing of it stands elsewhere than on the release's sheet.
   *
   * @param name of its file, without folder and ending
   * @param who the patient or the pseudonym
   * @param taken a day, an interval, or nothing
   * @param view its name
   * @param teeth that were named for it, as ISO 3950 numbers with spaces between
   * @param rowRuns where a row runs in the patient (Patient Orientation, PS3.3 C.7.6.1.1.1); empty
   *     if that is not known
   * @param columnRuns likewise
   * @param fileHash SHA-256 of the JPEG file
   */
  public record Photo(
      String name,
      String who,
      String taken,
      String view,
      String teeth,
      String rowRuns,
      String columnRuns,
      String fileHash) {}

  /** Who ended it, why and when. */
  public record End(String who, String why, Instant at) {}

  /**
   * Somebody came with the link.
   *
   * @param opened false if the second secret was wrong
   * @param client from where, by network address
   */
  public record Opening(boolean opened, String client, Instant at) {}
}
