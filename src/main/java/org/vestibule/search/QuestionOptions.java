package org.vestibule.search;

import org.jspecify.annotations.Nullable;

/**
 * What is asked for by name; null where nothing is.
 *
 * @param patient the patient's number
 * @param tooth in any notation that is read here
 * @param view the view in words
 * @param from first day, ISO 8601
 * @param to last day, ISO 8601
 * @param stage of the treatment
 * @param referrer a word of the referrer's name
 * @param text a word of treatment or note
 * @param state "filed" or "waiting"
 */
public record QuestionOptions(
    @Nullable String patient,
    @Nullable String tooth,
    @Nullable String view,
    @Nullable String from,
    @Nullable String to,
    @Nullable String stage,
    @Nullable String referrer,
    @Nullable String text,
    @Nullable String state) {

  /** Nothing is asked for by name. */
  public static final QuestionOptions NONE =
      new QuestionOptions(null, null, null, null, null, null, null, null, null);
}
