/**
 * Keeping what is kept: copies of the practice's record on another disk, bringing them back, and
 * mending a store after damage.
 *
 * <p>Layout of a backup folder: {@code backup.txt} says what is in it; {@code objects/} holds the
 * objects in the store's own layout, each copied once; {@code snapshots/<UTC time>/} holds one
 * moment's {@code ledger.sqlite}, {@code vestibule.toml}, {@code visits.csv} and {@code views.csv}.
 * A name that ends in {@code .part} is a copy that was interrupted.
 */
@NullMarked
package org.vestibule.flow.keeping;

import org.jspecify.annotations.NullMarked;
