package org.vestibule.forward.worklist;

import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.vestibule.base.Outcome;
import org.vestibule.base.Outcome.Done;
import org.vestibule.base.Outcome.Refused;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.net.AeTitle;
import org.vestibule.dicom.net.Answer;
import org.vestibule.dicom.net.Association;
import org.vestibule.dicom.net.Found;
import org.vestibule.dicom.net.Offer;
import org.vestibule.dicom.net.RemoteEntity;
import org.vestibule.dicom.net.Timeouts;
import org.vestibule.keys.TlsFiles;
import org.vestibule.keys.TlsSide;

/** Asks a Modality Worklist for the orders of a day (PS3.4 Annex K). */
public final class Worklist {

  /** Modality Worklist Information Model, FIND (PS3.4 K.6.1.4). */
  public static final String SOP_CLASS = "1.2.840.10008.5.1.4.31";

  /** No practice has more visits in a day; a worklist that answers with more ignores the day. */
  private static final int MOST = 2_000;

  private Worklist() {}

  /** The query's identifier: what is to match, and, empty, what is to be told. */
  public static DataSet question(WorklistRules rules, LocalDate day) {
    DataSet step =
        new DataSet()
            .put(WorklistTags.START_DATE, day)
            .putEmpty(WorklistTags.START_TIME)
            .putEmpty(WorklistTags.PERFORMING_PHYSICIAN)
            .putEmpty(Tags.ScheduledProcedureStepDescription)
            .putEmpty(Tags.ScheduledProtocolCodeSequence)
            .putEmpty(Tags.ScheduledProcedureStepID);
    textOrEmpty(step, WorklistTags.STATION_TITLE, rules.station());
    textOrEmpty(step, Tags.Modality, rules.modality());
    return new DataSet()
        .putEmpty(Tags.AccessionNumber)
        .putEmpty(Tags.ReferringPhysicianName)
        .putEmpty(Tags.PatientName)
        .putEmpty(Tags.PatientID)
        .putEmpty(Tags.IssuerOfPatientID)
        .putEmpty(Tags.PatientBirthDate)
        .putEmpty(Tags.PatientSex)
        .putEmpty(Tags.StudyInstanceUID)
        .putEmpty(WorklistTags.REQUESTING_PHYSICIAN)
        .putEmpty(Tags.RequestedProcedureDescription)
        .putEmpty(Tags.RequestedProcedureCodeSequence)
        .putEmpty(Tags.RequestedProcedureID)
        .put(WorklistTags.STEP_SEQUENCE, step);
  }

  private static void textOrEmpty(DataSet to, int tag, String text) {
    if (text.isEmpty()) {
      to.putEmpty(tag);
    } else {
      to.put(tag, text);
    }
  }

  /** The orders of a day; refused if the worklist can't be asked or does not answer. */
  public static Outcome<WorklistAnswer> ask(WorklistRules rules, LocalDate day, Clock clock) {
    Outcome<RemoteEntity> remote = remote(rules, clock);
    if (!(remote instanceof Done<RemoteEntity> known)) {
      return ((Refused<RemoteEntity>) remote).as();
    }
    Outcome<Association> opened =
        Association.open(known.value(), List.of(Offer.ofService(SOP_CLASS)));
    if (!(opened instanceof Done<Association> done)) {
      return ((Refused<Association>) opened).as();
    }
    try (Association association = done.value()) {
      return association
          .find(SOP_CLASS, question(rules, day), MOST)
          .then(found -> answered(found, rules, day));
    }
  }

  private static Outcome<RemoteEntity> remote(WorklistRules rules, Clock clock) {
    Optional<TlsFiles> files = rules.tls();
    Outcome<Optional<TlsSide>> tls =
        files.isEmpty()
            ? Outcome.done(Optional.empty())
            : files.get().client(clock).map(Optional::of);
    return tls.then(
        side ->
            AeTitle.read(rules.called())
                .then(
                    called ->
                        AeTitle.read(rules.calling())
                            .map(
                                calling ->
                                    new RemoteEntity(
                                        rules.host(),
                                        rules.port(),
                                        called,
                                        calling,
                                        side,
                                        Timeouts.DEFAULT))));
  }

  static Outcome<WorklistAnswer> answered(Found found, WorklistRules rules, LocalDate day) {
    if (found.last().kind() != Answer.Kind.SUCCESS && !found.more()) {
      return Outcome.refused(
          "the worklist refused the query: " + found.last().words(),
          "have its administrator look for the reason; nothing was taken over");
    }
    List<WorklistEntry> entries = new ArrayList<>();
    List<String> oddities = new ArrayList<>();
    int others = 0;
    for (DataSet answer : found.answers()) {
      Outcome<List<WorklistEntry>> read = EntryReader.read(answer);
      if (read instanceof Refused<List<WorklistEntry>> refused) {
        oddities.add(refused.sentence());
        continue;
      }
      for (WorklistEntry entry : read.orThrow()) {
        if (isAskedFor(entry, rules, day)) {
          entries.add(entry);
        } else {
          others++;
        }
      }
    }
    return Outcome.done(new WorklistAnswer(entries, oddities, others, found.more()));
  }

  /** A worklist may ignore what it was asked for. */
  private static boolean isAskedFor(WorklistEntry entry, WorklistRules rules, LocalDate day) {
    return entry.start().toLocalDate().equals(day)
        && (rules.station().isEmpty() || entry.station().equals(rules.station()))
        && (rules.modality().isEmpty() || entry.modality().equals(rules.modality()));
  }
}
