package org.vestibule.forward;

import java.time.Instant;
import java.util.Optional;
import java.util.Set;
import org.vestibule.base.Outcome;

/** One destination, as the courier sees it: something that can be opened, told and asked. */
public interface Archive {

  /**
   * A kind of object in a form, for which a session is opened (PS3.8 7.1.1.13).
   *
   * @param sopClassUid what it is
   * @param transferSyntaxUid how its bytes are laid; it is sent so or not at all
   */
  record Form(String sopClassUid, String transferSyntaxUid) {

    // In words, since what a record brings of itself costs the first delivery some 20 ms.
    @Override
    public boolean equals(Object other) {
      return other instanceof Form form
          && sopClassUid.equals(form.sopClassUid)
          && transferSyntaxUid.equals(form.transferSyntaxUid);
    }

    @Override
    public int hashCode() {
      return 31 * sopClassUid.hashCode() + transferSyntaxUid.hashCode();
    }
  }

  /**
   * Connects. A form that the archive does not take is no reason to refuse: {@link
   * ArchiveSession#store} refuses such a parcel.
   *
   * @param forms what will be sent; empty if it is only asked
   * @param reports where a report of storage commitment goes that arrives in this session
   * @return refused if the archive can't be reached or will not speak with us; that may pass, so
   *     whatever was to be sent goes on waiting
   */
  Outcome<ArchiveSession> open(Set<Form> forms, ReportSink reports);

  /** Until when it asked to be left alone in an answer; empty if it did not, or that is over. */
  default Optional<Instant> notBefore() {
    return Optional.empty();
  }
}
