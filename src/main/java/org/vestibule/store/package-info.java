/** What lasts: write-once objects, the ledger, and an index that can be rebuilt. */
@NullMarked
package org.vestibule.store;

import org.jspecify.annotations.NullMarked;
