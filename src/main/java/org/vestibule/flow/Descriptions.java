package org.vestibule.flow;

import java.util.List;
import java.util.Locale;
import org.vestibule.assign.Decision;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Visit;
import org.vestibule.base.ContentHash;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.Area;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Occupant;
import org.vestibule.dental.Tooth;
import org.vestibule.dental.ToothPosition;
import org.vestibule.dental.View;
import org.vestibule.intake.CaptureFacts;
import org.vestibule.store.index.IndexRecord;
import org.vestibule.store.index.IndexRecord.Shows;
import org.vestibule.store.index.IndexRecord.Who;
import org.vestibule.store.index.UsualFrame;

/** Describes photographs for searching and for lines of results. */
final class Descriptions {

  private Descriptions() {}

  /** A filed photograph. */
  static IndexRecord filed(
      ContentHash hash,
      String id,
      String objectUid,
      CaptureFacts facts,
      Decision decision,
      List<String> advice) {
    Visit visit = decision.visit();
    return new IndexRecord(
        hash.hex(),
        id,
        true,
        objectUid,
        facts.takenAt(),
        who(visit),
        shows(decision),
        device(facts),
        decision.treatment(),
        decision.note(),
        advice);
  }

  private static Who who(Visit visit) {
    Patient patient = visit.patient();
    return new Who(
        patient.id(),
        patient.issuer(),
        name(patient.name()),
        name(visit.referrer()),
        name(visit.dentist()),
        visit.accessionNumber(),
        visit.key(),
        visit.start().toLocalDate());
  }

  private static Shows shows(Decision decision) {
    View view = decision.view();
    return new Shows(
        view.key(),
        view.name(),
        decision.teeth().isEmpty() ? "" : decision.teeth().words(),
        decision.teeth().teeth().stream().map(Tooth::iso).toList(),
        decision.teeth().positions().stream()
            .filter(at -> at.occupant() != Occupant.TOOTH)
            .map(Descriptions::occupant)
            .toList(),
        decision.teeth().areas().stream().map(Area::iso).toList(),
        InFrame.of(view),
        mirror(decision.mirror()),
        decision.stage() == null ? "" : decision.stage().words(),
        decision.accessories().stream().map(Accessory::key).toList());
  }

  private static String occupant(ToothPosition at) {
    return at.tooth().iso() + " " + at.occupant().words();
  }

  /** A photograph that waits: what its camera wrote, and nothing that is only proposed. */
  static IndexRecord waiting(ContentHash hash, String id, CaptureFacts facts) {
    Shows shows =
        new Shows(
            "",
            "",
            "",
            List.of(),
            List.of(),
            List.of(),
            UsualFrame.NONE,
            mirror(Mirror.UNKNOWN),
            "",
            List.of());
    return new IndexRecord(
        hash.hex(), id, false, null, facts.takenAt(), Who.NOBODY, shows, device(facts), "", "");
  }

  static String device(CaptureFacts facts) {
    String camera = facts.camera();
    return camera == null ? "" : camera;
  }

  private static String mirror(Mirror mirror) {
    return mirror.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** A DICOM person name as people read it: given names before the family name. */
  static String name(String pn) {
    String[] parts = pn.split("=", 2)[0].split("\\^", -1);
    StringBuilder words = new StringBuilder();
    for (int i : new int[] {3, 1, 2, 0, 4}) {
      if (i < parts.length && !parts[i].isBlank()) {
        words.append(words.isEmpty() ? "" : " ").append(parts[i].strip());
      }
    }
    return words.toString();
  }
}
