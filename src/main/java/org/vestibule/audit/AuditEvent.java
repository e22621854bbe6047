package org.vestibule.audit;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * One message's content (PS3.15 A.5.1, A.5.2), as {@link AuditEvents} makes it.
 *
 * @param id EventID
 * @param types EventTypeCode, maybe none
 * @param action EventActionCode: C, R, U, D or E
 * @param outcome EventOutcomeIndicator
 * @param words EventOutcomeDescription; empty if there is nothing to say
 * @param participants who took part, one at least
 * @param objects what it was about
 */
public record AuditEvent(
    AuditCode id,
    List<AuditCode> types,
    char action,
    Instant at,
    AuditOutcome outcome,
    String words,
    List<Participant> participants,
    List<ObjectOfEvent> objects) {

  public AuditEvent {
    types = List.copyOf(types);
    participants = List.copyOf(participants);
    objects = List.copyOf(objects);
  }

  /**
   * Who took part.
   *
   * @param userId who, as the site knows them
   * @param alternativeId another name of the same, such as an AE title; empty if none
   * @param name a person's name; empty if none
   * @param requestor true for who caused the event
   * @param roles RoleIDCode, maybe none
   * @param address host name or IP address, or a URI; empty if none
   */
  record Participant(
      String userId,
      String alternativeId,
      String name,
      boolean requestor,
      List<AuditCode> roles,
      String address) {

    Participant {
      roles = List.copyOf(roles);
    }
  }

  /**
   * What it was about.
   *
   * @param id ParticipantObjectID
   * @param idType ParticipantObjectIDTypeCode
   * @param type 1 for a person, 2 for what belongs to a system
   * @param role ParticipantObjectTypeCodeRole
   * @param lifeCycle ParticipantObjectDataLifeCycle; 0 if not said
   * @param name ParticipantObjectName; used where there is no query
   * @param query ParticipantObjectQuery in base 64; empty if it is none
   * @param details pairs of type and value
   * @param study what is known of a study; null for anything else
   */
  record ObjectOfEvent(
      String id,
      AuditCode idType,
      int type,
      int role,
      int lifeCycle,
      String name,
      String query,
      List<Detail> details,
      @Nullable AuditedStudy study) {

    ObjectOfEvent {
      details = List.copyOf(details);
    }
  }

  /** A ParticipantObjectDetail. */
  record Detail(String type, String value) {}
}
