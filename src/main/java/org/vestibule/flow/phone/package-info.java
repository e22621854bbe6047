/**
 * The phone's way in: a page for one visit is opened by a person, phones send files by it, and each
 * file lies in the inbox with that person's word.
 */
@NullMarked
package org.vestibule.flow.phone;

import org.jspecify.annotations.NullMarked;
