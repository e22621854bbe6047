/** A file system on top of another one, that fails when it is told to. */
@NullMarked
package org.vestibule.store.faults;

import org.jspecify.annotations.NullMarked;
