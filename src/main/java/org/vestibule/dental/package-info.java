/**
 * The vocabulary of the trade: teeth and notations, areas, views, accessories, orientation algebra,
 * standard codes.
 */
@NullMarked
package org.vestibule.dental;

import org.jspecify.annotations.NullMarked;
