package org.vestibule.web;

import java.io.IOException;
import java.util.Optional;
import org.vestibule.flow.phone.WayIn;
import org.vestibule.store.ledger.PhoneLinkRow;

/** Finds the page that a phone's session is about, as long as it is open. */
final class PhonePages {

  /** What answers for an open page. */
  @FunctionalInterface
  interface Step {
    Answer answer(PhoneLinkRow link) throws IOException;
  }

  private final WayIn ways;

  PhonePages(Site site) {
    this.ways = new WayIn(site.practice());
  }

  /** The answer for the session's page; a refusal in words if it was ended or its day is over. */
  Answer with(Asked asked, Step step) throws IOException {
    String scope = asked.visitor().scope();
    Optional<PhoneLinkRow> link =
        scope.matches("\\d{1,9}") ? ways.find(Integer.parseInt(scope)) : Optional.empty();
    return link.isEmpty() ? Answers.refused(asked, 410, "phone-ended") : step.answer(link.get());
  }
}
