package org.vestibule.assign;

import com.fasterxml.jackson.annotation.JsonInclude;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Accessory;
import org.vestibule.dental.AccessoryCatalogue;
import org.vestibule.dental.Edge;
import org.vestibule.dental.Incisors;
import org.vestibule.dental.Mirror;
import org.vestibule.dental.Notation;
import org.vestibule.dental.Stage;
import org.vestibule.dental.Teeth;
import org.vestibule.dental.TeethReader;
import org.vestibule.dental.View;
import org.vestibule.dental.ViewCatalogue;

/**
 * A decision in plain strings and numbers, as a ledger keeps it. Dates are ISO 8601, teeth ISO 3950
 * marked FDI, {@code incisors} and {@code up} edges of the RAW picture, enumerations by their
 * constants' names; null where nothing was stated. What was ordered is written only where something
 * was, so that decisions without an order read as they always did.
 */
public record DecisionRecord(
    String visit,
    String patientId,
    String issuer,
    String patientName,
    @Nullable String birthDate,
    String sex,
    String start,
    String end,
    String accessionNumber,
    String referrer,
    String dentist,
    String studyInstanceUid,
    String view,
    String teeth,
    String mirror,
    @Nullable String incisors,
    @Nullable String up,
    Boolean seen,
    @Nullable Double cropLeft,
    @Nullable Double cropTop,
    @Nullable Double cropRight,
    @Nullable Double cropBottom,
    List<String> accessories,
    @Nullable String stage,
    String treatment,
    String note,
    Boolean mayTrim,
    @Nullable Boolean maySalvage,
    String decidedBy,
    List<String> facts,
    @JsonInclude(JsonInclude.Include.NON_NULL) @Nullable Order order) {

  public DecisionRecord {
    accessories = List.copyOf(accessories);
    facts = List.copyOf(facts);
  }

  public static DecisionRecord of(Decision decision) {
    Visit visit = decision.visit();
    Patient patient = visit.patient();
    Crop crop = decision.crop();
    return new DecisionRecord(
        visit.key(),
        patient.id(),
        patient.issuer(),
        patient.name(),
        patient.birthDate() == null ? null : patient.birthDate().toString(),
        patient.sex().name(),
        visit.start().toString(),
        visit.end().toString(),
        visit.accessionNumber(),
        visit.referrer(),
        visit.dentist(),
        visit.studyInstanceUid(),
        decision.view().key(),
        decision.teeth().text(),
        decision.mirror().name(),
        decision.incisors() == null ? null : decision.incisors().name(),
        decision.up() == null ? null : decision.up().name(),
        decision.seen(),
        crop == null ? null : Double.valueOf(crop.left()),
        crop == null ? null : Double.valueOf(crop.top()),
        crop == null ? null : Double.valueOf(crop.right()),
        crop == null ? null : Double.valueOf(crop.bottom()),
        decision.accessories().stream().map(Accessory::key).toList(),
        decision.stage() == null ? null : decision.stage().name(),
        decision.treatment(),
        decision.note(),
        decision.mayTrim(),
        decision.maySalvage() ? Boolean.TRUE : null,
        decision.decidedBy(),
        decision.facts(),
        visit.order());
  }

  /** The decision again, or a refusal if this program no longer knows something that it names. */
  public Outcome<Decision> toDecision(ViewCatalogue views) {
    View known = views.byKey(view).orElse(null);
    if (known == null) {
      return Outcome.refused(
          "the kept decision names the view \"" + view + "\", which is not known here",
          "restore the practice's file of views");
    }
    return keptTeeth().then(read -> decision(known, read));
  }

  private Outcome<Teeth> keptTeeth() {
    return teeth.isEmpty()
        ? Outcome.done(Teeth.NONE)
        : new TeethReader(Notation.ISO_3950).read(teeth);
  }

  private Outcome<Decision> decision(View known, Teeth read) {
    try {
      return Outcome.done(
          new Decision(
              keptVisit(),
              known,
              read,
              Mirror.valueOf(mirror),
              incisors == null ? null : Incisors.valueOf(incisors),
              up == null ? null : Edge.valueOf(up),
              seen,
              crop(),
              keptAccessories(),
              stage == null ? null : Stage.valueOf(stage),
              treatment,
              note,
              mayTrim,
              maySalvage != null && maySalvage,
              decidedBy,
              facts));
    } catch (DateTimeException | IllegalArgumentException e) {
      return Outcome.refused(
          "the kept decision can't be read back", "verify the ledger; it may be damaged");
    }
  }

  private Visit keptVisit() {
    LocalDate born = birthDate == null ? null : LocalDate.parse(birthDate);
    return new Visit(
        visit,
        new Patient(patientId, issuer, patientName, born, Sex.valueOf(sex)),
        LocalDateTime.parse(start),
        LocalDateTime.parse(end),
        accessionNumber,
        referrer,
        dentist,
        studyInstanceUid,
        order);
  }

  private @Nullable Crop crop() {
    if (cropLeft == null && cropTop == null && cropRight == null && cropBottom == null) {
      return null;
    }
    if (cropLeft == null || cropTop == null || cropRight == null || cropBottom == null) {
      throw new IllegalArgumentException("a crop has four sides");
    }
    return new Crop(cropLeft, cropTop, cropRight, cropBottom);
  }

  private List<Accessory> keptAccessories() {
    List<Accessory> kept = new ArrayList<>();
    for (String key : accessories) {
      kept.add(
          AccessoryCatalogue.byKey(key)
              .orElseThrow(() -> new IllegalArgumentException("an unknown accessory")));
    }
    return kept;
  }
}
