package org.vestibule.flow;

import java.time.LocalDateTime;
import java.util.EnumSet;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Decision;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Visit;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.deid.Confidentiality;
import org.vestibule.deid.ProfileOption;
import org.vestibule.deid.Substitutes;
import org.vestibule.deid.UidMap;
import org.vestibule.encode.OwnTexts;
import org.vestibule.encode.WithoutIdentity;
import org.vestibule.flow.DoorRules.Identity;
import org.vestibule.release.Pseudonyms;
import org.vestibule.store.ledger.Intent;

/**
 * Takes the identity out of photographs before they become objects, where a site has settled that:
 * the Basic Profile (PS3.15 Annex E) with Clean Descriptors, and with Modified Dates if dates are
 * kept. The key is made from the practice's secret, which lies apart from the objects.
 */
final class Door {

  /** What stands where a date has to be and none may: as in the profile's dummies. */
  private static final LocalDateTime NO_DATE = LocalDateTime.of(1900, 1, 1, 0, 0);

  private final Practice practice;

  Door(Practice practice) {
    this.practice = practice;
  }

  /** How the objects of these intents are made; null if they are to say whose they are. */
  @Nullable WithoutIdentity profile(Making making, Decision decision, List<Intent> intents) {
    if (making.hasIdentity()) {
      return null;
    }
    Set<ProfileOption> options = EnumSet.of(ProfileOption.CLEAN_DESCRIPTORS);
    if (making.identity() == Identity.DATES_MOVED) {
      options.add(ProfileOption.RETAIN_MODIFIED_DATES);
    }
    Patient patient = decision.visit().patient();
    return new WithoutIdentity(
        Confidentiality.of(options, List.of()).orThrow(),
        new Substitutes(
            pseudonym(patient),
            uids(intents),
            shiftDays(patient.issuer(), patient.id()),
            false,
            OwnTexts.STANDARD));
  }

  /** The objects' own UIDs were made for them and stay; every other one is replaced. */
  private UidMap uids(List<Intent> intents) {
    Set<String> own = new HashSet<>();
    for (Intent intent : intents) {
      own.addAll(List.of(intent.sopUid(), intent.seriesUid(), intent.studyUid()));
    }
    UidMap others = pseudonyms().uids();
    return uid -> own.contains(uid) ? uid : others.substitute(uid);
  }

  private Pseudonyms pseudonyms() {
    return new Pseudonyms(practice.store().keyFor("intake without identity"));
  }

  String pseudonym(Patient patient) {
    return pseudonyms().patient(patient.issuer(), patient.id());
  }

  /** By how many days dates are moved in a patient's objects, as a negative number. */
  long shiftDays(String issuer, String patientId) {
    return pseudonyms().shiftDays(issuer, patientId);
  }

  /**
   * What a visit's study is derived from: never the study that a worklist names, and never that of
   * objects which say whose they are.
   */
  Visit hidden(Visit visit) {
    Patient patient = visit.patient();
    return new Visit(
        "without identity " + visit.key(),
        new Patient(pseudonym(patient), "", "", null, patient.sex()),
        visit.start(),
        visit.end(),
        "",
        "",
        "",
        "");
  }

  /** A day and time of the practice as it may stand in this patient's objects. */
  LocalDateTime moved(Identity identity, String issuer, String patientId, LocalDateTime at) {
    return switch (identity) {
      case KEPT -> at;
      case DATES_MOVED -> at.toLocalDate().plusDays(shiftDays(issuer, patientId)).atStartOfDay();
      case NO_DATES -> NO_DATE;
    };
  }

  /** Why these objects may not be made; empty if they may. The patient's consent decides. */
  <T> Optional<Refused<T>> objection(Making making, Decision decision) {
    if (making.hasIdentity() || practice.settings().door().facesCovered()) {
      return Optional.empty();
    }
    String covered =
        "if the consent of all these patients covers faces, set faces-covered = true under [intake]"
            + " in vestibule.toml";
    if (decision.view().showsFace()) {
      return Optional.of(
          new Refused<>(
              "its view shows the face, and objects are made without identity here",
              covered + "; otherwise take it off the list with reject"));
    }
    if (decision.crop() != null) {
      return Optional.of(
          new Refused<>(
              "its whole frame would be kept beside the crop and may show the face, and objects are"
                  + " made without identity here",
              covered + "; if no face is in the frame, file it without a crop"));
    }
    return Optional.empty();
  }
}
