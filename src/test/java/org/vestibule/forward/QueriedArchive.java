package org.vestibule.forward;

import java.time.Clock;
import java.time.Duration;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.Outcome;

/** An archive on this machine that confirms when it is asked; how a test comes to it. */
final class QueriedArchive {

  private QueriedArchive() {}

  /** A session that sends these forms. */
  static Outcome<ArchiveSession> open(int port, Set<Archive.Form> forms) {
    DestinationRules rules =
        new DestinationRules(
            "archive",
            true,
            new DestinationRules.Dicom("127.0.0.1", port, "ARCHIVE", "VESTIBULE", Optional.empty()),
            DestinationRules.Confirm.QUERY,
            Duration.ofMinutes(10),
            Duration.ofSeconds(20));
    return DicomLine.of(rules, Clock.systemUTC()).orThrow().open(forms, report -> true);
  }
}
