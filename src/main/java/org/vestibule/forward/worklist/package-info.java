/** Orders of the day, asked from a Modality Worklist (PS3.4 Annex K). */
@NullMarked
package org.vestibule.forward.worklist;

import org.jspecify.annotations.NullMarked;
