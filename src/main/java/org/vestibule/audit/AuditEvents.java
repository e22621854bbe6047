package org.vestibule.audit;

import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Base64;
import java.util.List;
import org.vestibule.audit.AuditEvent.Detail;
import org.vestibule.audit.AuditEvent.ObjectOfEvent;
import org.vestibule.audit.AuditEvent.Participant;

/**
 * Makes the messages of PS3.15 A.5.3 that this program has an occasion for. A message is about one
 * patient at most: an event with several is told by several messages.
 */
public final class AuditEvents {

  private static final int PERSON = 1;
  private static final int SYSTEM = 2;
  private static final int PATIENT = 1;
  private static final int REPORT = 3;
  private static final int SECURITY_RESOURCE = 13;
  private static final String NO_QUERY = "";

  private final AuditPeer program;
  private final Clock clock;

  /**
   * @param program this program on this machine
   */
  public AuditEvents(AuditPeer program, Clock clock) {
    this.program = program;
    this.clock = clock;
  }

  /** A.5.3.1 Application Activity: a long-running part begins or ends. */
  public AuditEvent application(boolean starts, AuditPeer launcher) {
    return event(
        "application-activity",
        List.of(starts ? "application-start" : "application-stop"),
        'E',
        AuditOutcome.SUCCESS,
        "",
        List.of(
            party(program, false, "application"), party(launcher, true, "application-launcher")),
        List.of());
  }

  /** A.5.3.5 Data Import: photographs from files became objects. */
  public AuditEvent imported(AuditPeer who, AuditPeer from, AuditedStudy study) {
    return event(
        "import",
        List.of(),
        'C',
        AuditOutcome.SUCCESS,
        "",
        List.of(
            party(who, true, "destination-role"),
            party(program, false, "destination-role"),
            party(from, false, "source-media")),
        of(study, 2));
  }

  /** A.5.3.4 Data Export: files or copies left the record. */
  public AuditEvent exported(AuditPeer who, AuditPeer to, AuditedStudy study) {
    return event(
        "export",
        List.of(),
        'R',
        AuditOutcome.SUCCESS,
        "",
        List.of(
            party(who, true, "source-role"),
            party(program, false, "source-role"),
            party(to, false, "destination-media")),
        of(study, 10));
  }

  /**
   * A.5.3.6 DICOM Instances Accessed.
   *
   * @param action C made, R looked at, U replaced by a correction, D taken out of the record
   */
  public AuditEvent accessed(AuditPeer who, char action, AuditedStudy study) {
    return event(
        "instances-accessed",
        List.of(),
        action,
        AuditOutcome.SUCCESS,
        "",
        List.of(party(who, true), party(program, false)),
        of(study, action == 'D' ? 14 : 6));
  }

  /** A.5.3.3 Begin Transferring DICOM Instances. */
  public AuditEvent beginsTransfer(AuditPeer to, AuditedStudy study) {
    return event(
        "begin-transferring",
        List.of(),
        'E',
        AuditOutcome.SUCCESS,
        "",
        List.of(party(program, true, "source-role"), party(to, false, "destination-role")),
        of(study, 0));
  }

  /**
   * A.5.3.7 DICOM Instances Transferred.
   *
   * @param words what went wrong, without a patient's data; empty if nothing did
   */
  public AuditEvent transferred(
      AuditPeer to, AuditedStudy study, AuditOutcome outcome, String words) {
    return event(
        "instances-transferred",
        List.of(),
        'C',
        outcome,
        words,
        List.of(party(program, true, "source-role"), party(to, false, "destination-role")),
        of(study, 0));
  }

  /** A.5.3.10 Query: a question to the program's own record, in a person's words. */
  public AuditEvent asked(AuditPeer who, String question) {
    ObjectOfEvent query =
        new ObjectOfEvent(
            "find",
            AuditCode.of("search-criteria"),
            SYSTEM,
            REPORT,
            0,
            "",
            base64(question.getBytes(StandardCharsets.UTF_8)),
            List.of(),
            null);
    return event(
        "query",
        List.of(),
        'E',
        AuditOutcome.SUCCESS,
        "",
        List.of(party(who, true, "source-role"), party(program, false, "destination-role")),
        List.of(query));
  }

  /**
   * A.5.3.10 Query: a C-FIND to another application.
   *
   * @param sopClass of the query, such as Modality Worklist
   * @param identifier the data set that was sent
   * @param transferSyntax in which it was sent
   */
  public AuditEvent queried(
      AuditPeer who,
      AuditPeer responder,
      String sopClass,
      byte[] identifier,
      String transferSyntax,
      AuditOutcome outcome,
      String words) {
    ObjectOfEvent query =
        new ObjectOfEvent(
            sopClass,
            AuditCode.of("class-uid"),
            SYSTEM,
            REPORT,
            0,
            "",
            base64(identifier),
            List.of(new Detail("TransferSyntax", transferSyntax)),
            null);
    return event(
        "query",
        List.of(),
        'E',
        outcome,
        words,
        List.of(
            party(who, true),
            party(program, false, "source-role"),
            party(responder, false, "destination-role")),
        List.of(query));
  }

  /** A.5.3.12 User Authentication: somebody logs in or out, or fails to. */
  public AuditEvent login(AuditPeer who, boolean in, AuditOutcome outcome, String words) {
    return event(
        "user-authentication",
        List.of(in ? "login" : "logout"),
        'E',
        outcome,
        words,
        List.of(party(who, true), party(program, false)),
        List.of());
  }

  /**
   * A.5.3.11 Security Alert.
   *
   * @param type {@code node-authentication} (a certificate that is not trusted) or {@code
   *     security-configuration} (an account or a right was changed)
   * @param subject what it was about: a host, a setting
   * @param words what happened
   */
  public AuditEvent alert(AuditPeer who, String type, String subject, String words) {
    ObjectOfEvent object =
        new ObjectOfEvent(
            subject,
            AuditCode.of("node-id"),
            SYSTEM,
            SECURITY_RESOURCE,
            0,
            subject,
            NO_QUERY,
            List.of(new Detail("Alert Description", words)),
            null);
    return event(
        "security-alert",
        List.of(type),
        'E',
        AuditOutcome.SERIOUS_FAILURE,
        "",
        List.of(party(program, false), party(who, true)),
        List.of(object));
  }

  private static String base64(byte[] bytes) {
    return Base64.getEncoder().encodeToString(bytes);
  }

  /** The study, then the patient: the only places where a patient's data stand. */
  private static List<ObjectOfEvent> of(AuditedStudy study, int lifeCycle) {
    return List.of(
        new ObjectOfEvent(
            study.studyUid(),
            AuditCode.of("study-uid"),
            SYSTEM,
            REPORT,
            lifeCycle,
            study.studyUid(),
            NO_QUERY,
            List.of(),
            study),
        new ObjectOfEvent(
            study.patientId(),
            AuditCode.of("patient-number"),
            PERSON,
            PATIENT,
            0,
            study.patientName(),
            NO_QUERY,
            List.of(),
            null));
  }

  private static Participant party(AuditPeer peer, boolean requestor, String... roles) {
    List<AuditCode> codes = new ArrayList<>();
    for (String role : roles) {
      codes.add(AuditCode.of(role));
    }
    return new Participant(
        peer.userId(), peer.alternativeId(), peer.name(), requestor, codes, peer.address());
  }

  private AuditEvent event(
      String id,
      List<String> types,
      char action,
      AuditOutcome outcome,
      String words,
      List<Participant> participants,
      List<ObjectOfEvent> objects) {
    return new AuditEvent(
        AuditCode.of(id),
        types.stream().map(AuditCode::of).toList(),
        action,
        clock.instant(),
        outcome,
        words,
        participants,
        objects);
  }
}
