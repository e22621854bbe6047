package org.vestibule.assign;

import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Laid;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.View;

/**
 * What a person's words say of one picture, before it is said whose it is.
 *
 * @param view what it shows
 * @param teeth that were named; maybe none
 * @param mirror whether the file holds a mirror image
 * @param crop the part to show, if not all
 * @param mayTrim true if edges that can't be turned may be dropped
 * @param laid how the picture is laid by these words
 */
public record Stated(
    View view, Teeth teeth, Mirror mirror, @Nullable Crop crop, boolean mayTrim, Laid laid) {}
