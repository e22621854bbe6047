package org.vestibule.flow;

import java.io.IOException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.vestibule.assign.Crop;
import org.vestibule.assign.Decision;
import org.vestibule.assign.Patient;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Reader;
import org.vestibule.dicom.Tags;
import org.vestibule.release.Original;
import org.vestibule.store.PhotoRef;
import org.vestibule.store.ledger.Intent;
import org.vestibule.store.ledger.Ledger;

/** Finds the kept objects that are to be copied. */
final class ReleasePhotos {

  /** In a picture of a face the eyes lie above this part of its height (chosen, no source). */
  private static final double FACE_ABOVE = 0.5;

  private final Practice practice;
  private final Ledger ledger;

  ReleasePhotos(Practice practice) {
    this.practice = practice;
    this.ledger = practice.store().ledger();
  }

  /**
   * The objects that these ids name, in this order; each once.
   *
   * @param crops by id, four fractions as a person says them
   */
  Outcome<List<ReleasedPhoto>> named(List<String> ids, Map<String, String> crops)
      throws IOException {
    List<ReleasedPhoto> photos = new ArrayList<>();
    Set<String> seen = new HashSet<>();
    for (String id : ids) {
      Outcome<PhotoRef> ref = practice.store().ids().find(id);
      if (ref instanceof Refused<PhotoRef> refused) {
        return refused.as();
      }
      String words = crops.get(id);
      Outcome<Optional<Crop>> crop =
          words == null ? Outcome.done(Optional.empty()) : Crop.read(words).map(Optional::of);
      if (crop instanceof Refused<Optional<Crop>> refused) {
        return Outcome.refused("photograph " + id + ": " + refused.reason(), refused.advice());
      }
      Outcome<ReleasedPhoto> photo = photo(ref.orThrow(), crop.orThrow().orElse(null));
      if (!(photo instanceof Done<ReleasedPhoto> found)) {
        return ((Refused<ReleasedPhoto>) photo).as();
      }
      if (seen.add(found.value().intent().sopUid())) {
        photos.add(found.value());
      }
    }
    return Outcome.done(photos);
  }

  private Outcome<ReleasedPhoto> photo(PhotoRef ref, @Nullable Crop crop) throws IOException {
    Outcome<DataSet> object = new KeptPhoto(practice).object(ref);
    if (object instanceof Refused<DataSet> refused) {
      return refused.as();
    }
    Intent intent =
        ledger.intents().current(ref.hash()).stream()
            .filter(one -> one.role() == ref.role())
            .findFirst()
            .orElseThrow();
    boolean face =
        object.orThrow().string(Tags.RecognizableVisualFeatures).filter("YES"::equals).isPresent();
    return DecisionJson.read(ledger.decisions().find(intent.decisionId()).orElseThrow().json())
        .toDecision(practice.views())
        .then(
            decision ->
                crop != null && decision.view().showsFace() && crop.top() < FACE_ABOVE
                    ? Outcome.<Decision>refused(
                        "the crop of photograph "
                            + practice.store().ids().of(ref.hash())
                            + " keeps some of the upper half of a face",
                        "name a part below the middle of the picture, without eyes and nose; or"
                            + " leave the crop out, with a consent that covers the face")
                    : Outcome.done(decision))
        .map(
            decision ->
                new ReleasedPhoto(
                    intent,
                    decision,
                    original(intent, decision, crop),
                    crop == null && (face || decision.view().showsFace())));
  }

  private Original original(Intent intent, Decision decision, @Nullable Crop crop) {
    Patient patient = decision.visit().patient();
    return new Original(
        intent.sopUid(),
        intent.hash().hex(),
        patient.issuer(),
        patient.id(),
        Descriptions.name(patient.name()),
        day(intent, decision),
        decision.view().name(),
        decision.teeth(),
        crop,
        () -> bytes(intent));
  }

  /**
   * The day it was taken, as far as its object may tell; where its file doesn't say, the visit's.
   */
  private @Nullable LocalDate day(Intent intent, Decision decision) {
    Patient patient = decision.visit().patient();
    LocalDate day = trueDay(intent, decision);
    return switch (Making.identity(intent)) {
      case KEPT -> day;
      case DATES_MOVED ->
          day.plusDays(new Door(practice).shiftDays(patient.issuer(), patient.id()));
      case NO_DATES -> null;
    };
  }

  private LocalDate trueDay(Intent intent, Decision decision) {
    LocalDateTime taken =
        ledger
            .arrivals()
            .facts(intent.hash(), FactsJson.KIND)
            .map(json -> FactsJson.read(json).takenAt())
            .orElse(null);
    return taken == null ? decision.visit().start().toLocalDate() : taken.toLocalDate();
  }

  private Outcome<byte[]> bytes(Intent intent) throws IOException {
    Optional<byte[]> bytes = practice.store().objects().get(intent.sopUid());
    return bytes.isEmpty()
        ? Outcome.refused(
            Outcome.Kind.DAMAGE,
            "the object of photograph " + intent.hash().brief() + " is missing",
            "restore it from the backup; verify names everything that is missing")
        : Part10Reader.read(bytes.get()).map(readable -> bytes.get());
  }
}
