/** The use cases that the command line and the pages both call. */
@NullMarked
package org.vestibule.flow;

import org.jspecify.annotations.NullMarked;
