package org.vestibule.release;

import java.util.List;
import java.util.Set;
import org.vestibule.deid.ProfileOption;

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
   */
  public record Item(
      Original original,
      String name,
      String copyUid,
      String pseudonym,
      Set<ProfileOption> attested) {
    public Item {
      attested = Set.copyOf(attested);
    }
  }
}
