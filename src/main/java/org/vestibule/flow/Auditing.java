package org.vestibule.flow;

import java.io.IOException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.vestibule.assign.DecisionRecord;
import org.vestibule.audit.AuditEvent;
import org.vestibule.audit.AuditEvents;
import org.vestibule.audit.AuditOutcome;
import org.vestibule.audit.AuditPeer;
import org.vestibule.audit.AuditTrail;
import org.vestibule.audit.AuditedStudy;
import org.vestibule.audit.SendReport;
import org.vestibule.base.ContentHash;
import org.vestibule.encode.Recipe;
import org.vestibule.forward.Instance;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/**
 * Tells the site's audit repository what was done, one message for each study. With audit off,
 * nothing is gathered and nothing is written; the ledger keeps the practice's own history in any
 * case.
 */
public final class Auditing implements AutoCloseable {

  private final Ledger ledger;
  private final AuditTrail trail;
  private final Map<String, List<ContentHash>> filed = new LinkedHashMap<>();

  Auditing(Ledger ledger, AuditTrail trail) {
    this.ledger = ledger;
    this.trail = trail;
  }

  /** For rooms that make messages of their own. */
  public AuditTrail trail() {
    return trail;
  }

  /** Whoever is logged in on this machine, by a name they gave if they did. */
  public static AuditPeer person(String name) {
    String login = System.getProperty("user.name", "unknown");
    return AuditPeer.person(name.isBlank() ? login : name, login, "");
  }

  /** Gathers a photograph that was just filed, until {@link #told}. */
  synchronized void filed(ContentHash hash, String by) {
    if (trail.isOn()) {
      filed.computeIfAbsent(by, any -> new ArrayList<>()).add(hash);
    }
  }

  /** Tells of what was gathered: photographs became objects of the record. */
  public synchronized void told() throws IOException {
    Map<String, List<ContentHash>> now = new LinkedHashMap<>(filed);
    filed.clear();
    for (Map.Entry<String, List<ContentHash>> entry : now.entrySet()) {
      List<Intent> intents = new ArrayList<>();
      entry.getValue().forEach(hash -> intents.addAll(ledger.intents().current(hash)));
      AuditPeer inbox = new AuditPeer("inbox", "", "", "");
      tell(intents, false, study -> events().imported(person(entry.getKey()), inbox, study));
    }
  }

  /** Tells of a correction: what counted before was replaced by what counts now. */
  synchronized void moved(ContentHash hash, List<Intent> before, String by) throws IOException {
    filed.values().forEach(hashes -> hashes.remove(hash));
    accessed(before, 'U', by);
    accessed(ledger.intents().current(hash), 'C', by);
  }

  /**
   * Tells that objects were looked at (R), made by a correction (C), replaced (U) or taken out of
   * the record (D).
   */
  public void accessed(List<Intent> intents, char action, String by) throws IOException {
    accessed(intents, action, false, person(by));
  }

  /**
   * The same.
   *
   * @param anonymous true if copies without identity were looked at
   */
  void accessed(List<Intent> intents, char action, boolean anonymous, AuditPeer by)
      throws IOException {
    tell(intents, anonymous, study -> events().accessed(by, action, study));
  }

  /** Tells that somebody came or went, or was not let in. */
  void login(AuditPeer who, boolean in, AuditOutcome outcome, String words) throws IOException {
    if (trail.isOn()) {
      trail.record(events().login(who, in, outcome, words));
    }
  }

  /** Tells that somebody looked at a photograph. */
  public void looked(ContentHash hash, String by) throws IOException {
    if (trail.isOn()) {
      accessed(ledger.intents().current(hash), 'R', by);
    }
  }

  /**
   * Tells that files or copies left the record.
   *
   * @param to where to: a receiver, or a file's name
   * @param anonymous true if the copies hold no identity
   */
  public void exported(List<Intent> intents, String to, boolean anonymous, String by)
      throws IOException {
    AuditPeer receiver = new AuditPeer(to, "", "", "");
    tell(intents, anonymous, study -> events().exported(person(by), receiver, study));
  }

  /** Tells that somebody searched, and for what. */
  public void asked(String question, String by) throws IOException {
    asked(question, person(by));
  }

  void asked(String question, AuditPeer by) throws IOException {
    if (trail.isOn()) {
      trail.record(events().asked(by, question));
    }
  }

  /** Tells that the objects of this object's study begin to be sent. */
  public void transferBegins(AuditPeer to, String sopUid) throws IOException {
    Optional<Intent> intent = intentOf(sopUid);
    if (intent.isPresent()) {
      Optional<AuditedStudy> study = study(intent.get(), List.of());
      if (study.isPresent()) {
        trail.record(events().beginsTransfer(to, study.get()));
      }
    }
  }

  /**
   * Tells what came of sending objects of one study; nothing if there are none.
   *
   * @param words what went wrong, without patient data; empty if nothing did
   */
  public void transferred(AuditPeer to, List<Instance> objects, AuditOutcome outcome, String words)
      throws IOException {
    if (objects.isEmpty()) {
      return;
    }
    Map<String, List<String>> byClass = new LinkedHashMap<>();
    for (Instance one : objects) {
      byClass
          .computeIfAbsent(one.sopClassUid(), any -> new ArrayList<>())
          .add(one.sopInstanceUid());
    }
    List<AuditedStudy.SopClass> classes = new ArrayList<>();
    byClass.forEach((uid, uids) -> classes.add(new AuditedStudy.SopClass(uid, uids)));
    Optional<AuditedStudy> study =
        intentOf(objects.get(0).sopInstanceUid()).flatMap(intent -> study(intent, classes));
    if (study.isPresent()) {
      trail.record(events().transferred(to, study.get(), outcome, words));
    }
  }

  /** Of a rejection note, the intent of the frame that it is about. */
  private Optional<Intent> intentOf(String sopUid) {
    Optional<Intent> intent = ledger.intents().find(sopUid);
    if (intent.isPresent()) {
      return intent;
    }
    return ledger
        .notes()
        .find(sopUid)
        .flatMap(
            note ->
                ledger.intents().of(note.hash()).stream()
                    .filter(one -> one.revision() == note.revision())
                    .findFirst());
  }

  private Optional<AuditedStudy> study(Intent intent, List<AuditedStudy.SopClass> classes) {
    return ledger
        .decisions()
        .find(intent.decisionId())
        .map(row -> DecisionJson.read(row.json()))
        .map(
            decision ->
                new AuditedStudy(
                    intent.studyUid(),
                    decision.patientId(),
                    decision.patientName(),
                    decision.accessionNumber(),
                    classes,
                    false));
  }

  /** Sends what is still to be sent to the site's server. */
  public SendReport send() throws IOException {
    return trail.send();
  }

  private AuditEvents events() {
    return trail.events();
  }

  private void tell(
      List<Intent> intents, boolean anonymous, Function<AuditedStudy, AuditEvent> message)
      throws IOException {
    if (!trail.isOn()) {
      return;
    }
    for (AuditedStudy study : studies(intents, anonymous)) {
      trail.record(message.apply(study));
    }
  }

  private List<AuditedStudy> studies(List<Intent> intents, boolean anonymous) {
    Map<String, List<Intent>> byStudy = new LinkedHashMap<>();
    for (Intent intent : intents) {
      byStudy.computeIfAbsent(intent.studyUid(), any -> new ArrayList<>()).add(intent);
    }
    List<AuditedStudy> studies = new ArrayList<>();
    byStudy.forEach((uid, of) -> study(uid, of, anonymous).ifPresent(studies::add));
    return studies;
  }

  private Optional<AuditedStudy> study(String uid, List<Intent> intents, boolean anonymous) {
    return ledger
        .decisions()
        .find(intents.get(0).decisionId())
        .map(row -> DecisionJson.read(row.json()))
        .map(decision -> study(uid, decision, intents, anonymous));
  }

  private static AuditedStudy study(
      String uid, DecisionRecord decision, List<Intent> intents, boolean anonymous) {
    return new AuditedStudy(
        uid,
        decision.patientId(),
        decision.patientName(),
        decision.accessionNumber(),
        List.of(
            new AuditedStudy.SopClass(
                Recipe.SOP_CLASS, intents.stream().map(Intent::sopUid).toList())),
        anonymous);
  }

  @Override
  public void close() throws IOException {
    told();
    trail.close();
  }
}
