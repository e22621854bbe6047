/**
 * What people read, in their language: files of words, and the trade's own words for teeth, views,
 * stages and sides, which pages, cards and sheets share.
 */
@NullMarked
package org.vestibule.words;

import org.jspecify.annotations.NullMarked;
