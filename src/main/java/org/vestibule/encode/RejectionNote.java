package org.vestibule.encode;

import java.time.LocalDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.vestibule.base.Outcome;
import org.vestibule.dental.Code;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Part10Writer;
import org.vestibule.dicom.Tags;
import org.vestibule.dicom.TransferSyntax;

/**
 * Makes the Key Object Selection Document (PS3.3 A.35.4; PS3.16 TID 2010) by which an archive is
 * told that objects no longer count. It stands in the patient's and study's context of those
 * objects. The same objects, reason and time give the same bytes.
 */
public final class RejectionNote {

  /** Key Object Selection Document Storage. */
  public static final String SOP_CLASS = "1.2.840.10008.5.1.4.1.1.88.59";

  /** Part of every note's identity: notes made otherwise are other notes. */
  public static final String VERSION = "1";

  /** Series of notes are numbered apart from series of photographs. */
  private static final int FIRST_SERIES = 1000;

  /** PS3.16 TID 2010, row numbers and concepts from memory; codes of DCM. */
  private static final Code TITLE_MODIFIER = new Code("DCM", "113011", "Document Title Modifier");

  private static final Code DESCRIPTION = new Code("DCM", "113012", "Key Object Description");

  /**
   * What is taken over from a rejected object: whose it is, and of which study; or that it isn't
   * said.
   */
  private static final List<Integer> CONTEXT =
      List.of(
          Tags.PatientName,
          Tags.PatientID,
          Tags.IssuerOfPatientID,
          Tags.PatientBirthDate,
          Tags.PatientSex,
          Tags.StudyInstanceUID,
          Tags.StudyDate,
          Tags.StudyTime,
          Tags.StudyDescription,
          Tags.AccessionNumber,
          Tags.ReferringPhysicianName,
          Tags.StudyID,
          Tags.InstitutionName,
          Tags.PatientIdentityRemoved,
          Tags.DeidentificationMethod,
          Tags.DeidentificationMethodCodeSequence,
          Tags.LongitudinalTemporalInformationModified);

  private RejectionNote() {}

  /**
   * The note as a Part 10 file in Explicit VR Little Endian.
   *
   * @param rejected what the objects that no longer count say of themselves, the frame first; all
   *     of one study
   * @param identity the note's own; its series holds notes alone
   * @param reason of what kind the reason is
   * @param at when it was decided, on the practice's clock
   */
  public static Outcome<byte[]> write(
      List<DataSet> rejected, NoteIdentity identity, RejectionReason reason, LocalDateTime at) {
    DataSet frame = rejected.get(0);
    DataSet note =
        new DataSet()
            .put(Tags.SpecificCharacterSet, "ISO_IR 192")
            .put(Tags.SOPClassUID, SOP_CLASS)
            .put(Tags.SOPInstanceUID, identity.sopInstanceUid());
    CONTEXT.forEach(tag -> frame.element(tag).ifPresent(note::put));
    long series = frame.integer(Tags.SeriesNumber).orElse(0);
    LocalDateTime second = at.truncatedTo(ChronoUnit.SECONDS);
    note.put(Tags.Modality, "KO")
        .put(Tags.SeriesInstanceUID, identity.seriesInstanceUid())
        .put(Tags.SeriesNumber, FIRST_SERIES + series)
        .put(Tags.SeriesDescription, "Photographs that no longer count")
        .putEmpty(Tags.ReferencedPerformedProcedureStepSequence)
        .put(Tags.Manufacturer, Recipe.SOFTWARE)
        .put(Tags.InstanceNumber, frame.integer(Tags.InstanceNumber).orElse(1))
        .put(Tags.ContentDate, second.toLocalDate())
        .put(Tags.ContentTime, second.toLocalTime())
        .put(Tags.CurrentRequestedProcedureEvidenceSequence, evidence(rejected));
    content(note, rejected, reason);
    return Part10Writer.write(note, TransferSyntax.EXPLICIT_LITTLE_ENDIAN);
  }

  /** Hierarchical SOP Instance Reference (PS3.3 C.17.2.1): study, series, objects. */
  private static DataSet evidence(List<DataSet> rejected) {
    Map<String, List<DataSet>> bySeries = new LinkedHashMap<>();
    for (DataSet object : rejected) {
      bySeries
          .computeIfAbsent(text(object, Tags.SeriesInstanceUID), any -> new ArrayList<>())
          .add(reference(object));
    }
    List<DataSet> series = new ArrayList<>();
    bySeries.forEach(
        (uid, objects) ->
            series.add(
                new DataSet()
                    .put(Tags.ReferencedSOPSequence, objects)
                    .put(Tags.SeriesInstanceUID, uid)));
    return new DataSet()
        .put(Tags.StudyInstanceUID, text(rejected.get(0), Tags.StudyInstanceUID))
        .put(Tags.ReferencedSeriesSequence, series);
  }

  /** SR Document Content (PS3.3 C.17.3) by TID 2010: title, why, what is meant. */
  private static void content(DataSet note, List<DataSet> rejected, RejectionReason reason) {
    List<DataSet> content = new ArrayList<>();
    Code modifier = reason.modifier();
    if (modifier != null) {
      content.add(
          item("HAS CONCEPT MOD", "CODE")
              .put(Tags.ConceptNameCodeSequence, CodeItems.item(TITLE_MODIFIER))
              .put(Tags.ConceptCodeSequence, CodeItems.item(modifier)));
    }
    content.add(
        item("CONTAINS", "TEXT")
            .put(Tags.ConceptNameCodeSequence, CodeItems.item(DESCRIPTION))
            .put(Tags.TextValue, reason.description()));
    for (DataSet object : rejected) {
      content.add(item("CONTAINS", "IMAGE").put(Tags.ReferencedSOPSequence, reference(object)));
    }
    note.put(Tags.ValueType, "CONTAINER")
        .put(Tags.ConceptNameCodeSequence, CodeItems.item(reason.title()))
        .put(Tags.ContinuityOfContent, "SEPARATE")
        .put(
            Tags.ContentTemplateSequence,
            new DataSet().put(Tags.MappingResource, "DCMR").put(Tags.TemplateIdentifier, "2010"))
        .put(Tags.ContentSequence, content);
  }

  private static DataSet item(String relationship, String type) {
    return new DataSet().put(Tags.RelationshipType, relationship).put(Tags.ValueType, type);
  }

  private static DataSet reference(DataSet object) {
    return new DataSet()
        .put(Tags.ReferencedSOPClassUID, text(object, Tags.SOPClassUID))
        .put(Tags.ReferencedSOPInstanceUID, text(object, Tags.SOPInstanceUID));
  }

  private static String text(DataSet object, int tag) {
    return object
        .string(tag)
        .orElseThrow(() -> new IllegalArgumentException("an object lacks " + Tags.text(tag)));
  }
}
