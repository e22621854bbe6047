package org.vestibule.flow;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.release.Original;
import org.vestibule.release.Proofs;

/**
 * Lets a person see, within the practice, what copies would show. No purpose is asked and no
 * consent: nothing leaves, and the ledger keeps nothing of it.
 */
public final class ReleaseLook {

  private final Practice practice;

  public ReleaseLook(Practice practice) {
    this.practice = practice;
  }

  /**
   * Writes the pictures into a new folder, each under its photograph's id.
   *
   * @param crops by id, the part that is to leave
   * @return how many there are
   */
  public Outcome<Integer> write(List<String> ids, Map<String, String> crops, Path folder)
      throws IOException {
    for (String id : crops.keySet()) {
      if (!ids.contains(id)) {
        return ReleaseRules.strangeCrop(id);
      }
    }
    Outcome<List<ReleasedPhoto>> photos = new ReleasePhotos(practice).named(ids, crops);
    if (photos instanceof Refused<List<ReleasedPhoto>> refused) {
      return refused.as();
    }
    Map<String, Original> pictures = new LinkedHashMap<>();
    for (ReleasedPhoto photo : photos.orThrow()) {
      pictures.put(practice.store().ids().of(photo.intent()), photo.original());
    }
    Outcome<Integer> written = Proofs.write(pictures, folder);
    if (written instanceof Done<Integer>) {
      for (ReleasedPhoto photo : photos.orThrow()) {
        practice.audit().looked(photo.intent().hash(), "");
      }
    }
    return written;
  }
}
