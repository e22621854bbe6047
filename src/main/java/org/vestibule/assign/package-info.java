/** Which patient, visit, view, teeth and mirror? Facts in, decision out, no writing. */
@NullMarked
package org.vestibule.assign;

import org.jspecify.annotations.NullMarked;
