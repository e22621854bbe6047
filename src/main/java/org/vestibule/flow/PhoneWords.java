package org.vestibule.flow;

import java.time.Instant;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Optional;
import org.vestibule.assign.PersonWords;
import org.vestibule.assign.PhoneStay;
import org.vestibule.assign.PhotoFact;
import org.vestibule.base.ContentHash;
import org.vestibule.dental.View;
import org.vestibule.store.ledger.PhoneLinkRow;
import org.vestibule.store.ledger.UploadRow;

/**
 * What was said of a photograph by the phone that it came by: the visit that the page was opened
 * for, and the view where somebody chose one. Nothing else is known from that: no teeth, no mirror.
 */
final class PhoneWords {

  private final Practice practice;

  PhoneWords(Practice practice) {
    this.practice = practice;
  }

  /** For each time that it came by a phone. */
  List<PersonWords> of(ContentHash photo) {
    return practice.store().ledger().uploads().of(photo).stream()
        .map(this::words)
        .flatMap(Optional::stream)
        .distinct()
        .toList();
  }

  private Optional<PersonWords> words(UploadRow upload) {
    return practice
        .store()
        .ledger()
        .phoneLinks()
        .find(upload.link())
        .map(link -> words(link, upload));
  }

  private PersonWords words(PhoneLinkRow link, UploadRow upload) {
    UploadRow.Received received = upload.received();
    if (received == null) {
      throw new IllegalArgumentException("the file is not received");
    }
    String view = practice.views().byKey(upload.view()).map(View::name).orElse("");
    return PersonWords.by(link.who())
        .with(PhotoFact.VISIT, link.visit())
        .with(PhotoFact.VIEW, view)
        .byPhone(new PhoneStay(local(link.at()), local(received.at())));
  }

  private LocalDateTime local(Instant moment) {
    return LocalDateTime.ofInstant(moment, practice.settings().zone());
  }
}
