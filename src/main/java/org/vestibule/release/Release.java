package org.vestibule.release;

import java.util.List;
import java.util.Set;
import org.vestibule.deid.ProfileOption;
import org.vestibule.dental.Tooth;

/**
 * Copies that are made, proved and ready to be handed over.
 *
 * @param manifestHash SHA-256 of the manifest
 * @param files their names, folders included
 */
public record Release(String manifestHash, List<String> files, List<Item> items) {

  public Release {
    files = List.copyOf(files);
    items = List.copyOf(items);
  }

  /**
   * One copy.
   *
   * @param pseudonym empty if the patient is named
   * @param attested what a person said of the picture
   * @param shown what the sheet says of it
   */
  public record Item(
      Original original,
      String name,
      String copyUid,
      String pseudonym,
      Set<ProfileOption> attested,
      Shown shown) {
    public Item {
      attested = Set.copyOf(attested);
    }
  }

  /**
   * What the sheet says of a copy; it was searched with all the rest.
   *
   * @param who the patient or the pseudonym
   * @param when a day, an interval, or nothing
   * @param view its name
   * @param teeth that were named for it
   * @param orientation of the copy (Patient Orientation): row and column, none if it has none
   * @param jpegHash SHA-256 of the JPEG file; empty without one
   */
  public record Shown(
      String who,
      String when,
      String view,
      List<Tooth> teeth,
      List<String> orientation,
      String jpegHash) {
    public Shown {
      teeth = List.copyOf(teeth);
      orientation = List.copyOf(orientation);
    }
  }
}
