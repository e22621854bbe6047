/**
 * The cards that sort a roll by themselves: drawn on paper, photographed like everything else, and
 * read again from a photograph.
 *
 * <p>A visit card says which visit the photographs beside it belong to; its code holds an opaque
 * token and nothing of a patient. A view card says how the photographs after it were taken. What a
 * card is taken to mean for a photograph is decided in {@code assign}, never here.
 */
@NullMarked
package org.vestibule.card;

import org.jspecify.annotations.NullMarked;
