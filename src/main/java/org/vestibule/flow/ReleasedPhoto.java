package org.vestibule.flow;

import org.vestibule.assign.Decision;
import org.vestibule.release.Original;
import org.vestibule.store.ledger.Intent;

/** A photograph that is to be copied: its object, what was decided, and how the copy knows it. */
record ReleasedPhoto(Intent intent, Decision decision, Original original, boolean showsFace) {}
