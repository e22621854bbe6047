/** Commands, configuration and wiring. */
@NullMarked
package org.vestibule.cli;

import org.jspecify.annotations.NullMarked;
