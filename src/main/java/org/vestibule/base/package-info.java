/** What every room shares: outcomes, content hashes, UIDs, the eight turns, bounded bytes. */
@NullMarked
package org.vestibule.base;

import org.jspecify.annotations.NullMarked;
