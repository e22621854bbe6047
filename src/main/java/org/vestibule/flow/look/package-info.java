/**
 * The look sheet: one page that shows what a folder holds, and the manifest to be completed beside
 * it. The page's parts know nothing of folders, so that other lists of photographs can use them.
 */
@NullMarked
package org.vestibule.flow.look;

import org.jspecify.annotations.NullMarked;
