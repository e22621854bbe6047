/**
 * What makes photographs findable: an index that holds nothing the ledger does not know, so that it
 * can be thrown away and made again.
 *
 * <p>A neutral question goes in ({@link org.vestibule.store.index.IndexQuery}), descriptions come
 * out ({@link org.vestibule.store.index.IndexRecord}); the engine behind it stays in this package.
 */
@NullMarked
package org.vestibule.store.index;

import org.jspecify.annotations.NullMarked;
