package org.vestibule.web;

import org.vestibule.words.Words;

/** Refusals that any page may need, in the asker's language. */
final class Answers {

  private Answers() {}

  static Answer notFound(Asked asked) {
    return refused(asked, 404, "refusal-not-found");
  }

  /**
   * A refusal whose reason has this key, and whose advice has it with {@code -advice}.
   *
   * @param values for {@code {0}} and so on in the reason
   */
  static Answer refused(Asked asked, int status, String key, Object... values) {
    Words words = PageWords.of(asked.language());
    return Answer.refused(
        status, words.say(key, values), words.say(key + "-advice"), asked.language());
  }
}
