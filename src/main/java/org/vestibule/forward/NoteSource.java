package org.vestibule.forward;

import java.io.IOException;
import org.vestibule.base.ContentHash;
import org.vestibule.base.Outcome;

/** Gives the note that tells an archive that a revision no longer counts. */
@FunctionalInterface
public interface NoteSource {

  /**
   * The SOP Instance UID of the note, whose file is among the objects; the same one each time.
   *
   * @param photo whose revision was taken back
   * @return refused if the note can't be made, with the reason
   */
  Outcome<String> note(ContentHash photo, int revision) throws IOException;
}
