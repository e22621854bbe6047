/**
 * Copies that leave the practice, each for one purpose: made by that purpose's rules, described on
 * a sheet, and searched for whatever must not be in them before anybody gets them.
 */
@NullMarked
package org.vestibule.release;

import org.jspecify.annotations.NullMarked;
