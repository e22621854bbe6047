package org.vestibule.card;

import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;

/**
 * A card that says how the photographs after it were taken. It is used again and again.
 *
 * @param view key of the view in the catalogue
 * @param teeth the teeth meant; null if the card names none
 * @param mirror whether through a mirror; null if the card doesn't say
 * @param incisors where the incisors lie in the raw picture; null if the card doesn't say
 * @param stage stage of the treatment; null if the card doesn't say
 */
public record ViewCard(
    String view,
    @Nullable Teeth teeth,
    @Nullable Mirror mirror,
    @Nullable Incisors incisors,
    @Nullable Stage stage)
    implements Card {}
