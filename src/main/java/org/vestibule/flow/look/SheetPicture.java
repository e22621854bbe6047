package org.vestibule.flow.look;

import org.vestibule.base.Outcome;

/** A picture that is drawn when the sheet reaches it, and not kept. */
@FunctionalInterface
public interface SheetPicture {

  /** The small picture, or why it can't be shown. */
  Outcome<Thumbnail> draw();
}
