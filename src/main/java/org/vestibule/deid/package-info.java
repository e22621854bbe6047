/**
 * De-identification by table: a data set in, a data set out (PS3.15 Annex E, Table E.1-1).
 *
 * <p>{@code profile.csv} is the standard's table, {@code beyond-the-table.csv} what goes besides,
 * {@code photographic-types.csv} the types that decide between X, Z and D. Whatever none of the
 * three knows is removed.
 */
@NullMarked
package org.vestibule.deid;

import org.jspecify.annotations.NullMarked;
