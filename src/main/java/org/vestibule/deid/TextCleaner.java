package org.vestibule.deid;

import java.util.Optional;

/**
 * Says what of a text may be handed on under the Clean Descriptors and Clean Structured Content
 * options: nothing, or what is known to identify nobody.
 */
@FunctionalInterface
public interface TextCleaner {

  /** Lets nothing through. */
  TextCleaner NOTHING = text -> Optional.empty();

  /** The text as it may leave, or nothing. */
  Optional<String> clean(String text);
}
