package org.vestibule.web;

import org.vestibule.words.Language;

/** Keeps the language that a browser's person chose. */
final class LanguageSwitch implements Page {

  @Override
  public Answer answer(Asked asked) {
    asked.choose(Language.of(asked.form("language")).orElse(asked.language()));
    return Answer.to(Then.safe(asked.form("then")));
  }
}
