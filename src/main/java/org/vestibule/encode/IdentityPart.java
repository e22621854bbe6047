package org.vestibule.encode;

import java.time.LocalDateTime;
import org.vestibule.assign.Patient;
import org.vestibule.assign.Visit;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.Tags;

/**
 * Whose photograph it is and when: Patient (PS3.3 C.7.1.1), General Study (C.7.2.1) and General
 * Series (C.7.3.1). Everything comes from the visit, nothing from the file.
 */
final class IdentityPart {

  private IdentityPart() {}

  static void write(DataSet to, Visit visit, ObjectIdentity identity, SeriesWords series) {
    Patient patient = visit.patient();
    to.put(Tags.PatientName, patient.name());
    to.put(Tags.PatientID, patient.id());
    if (!patient.issuer().isEmpty()) {
      to.put(Tags.IssuerOfPatientID, patient.issuer());
    }
    to.putEmpty(Tags.PatientBirthDate);
    if (patient.birthDate() != null) {
      to.put(Tags.PatientBirthDate, patient.birthDate());
    }
    to.put(Tags.PatientSex, patient.sex().dicom());
    LocalDateTime start = visit.start();
    to.put(Tags.StudyInstanceUID, identity.studyInstanceUid())
        .put(Tags.StudyDate, start.toLocalDate())
        .put(Tags.StudyTime, start.toLocalTime())
        .put(Tags.StudyDescription, "Dental photographs");
    textOrEmpty(to, Tags.AccessionNumber, visit.accessionNumber());
    textOrEmpty(to, Tags.ReferringPhysicianName, visit.referrer());
    boolean keyFits = Fitting.fits(visit.key(), Fitting.SH_CHARACTERS);
    textOrEmpty(to, Tags.StudyID, keyFits ? visit.key() : "");
    to.put(Tags.Modality, "XC")
        .put(Tags.SeriesInstanceUID, identity.seriesInstanceUid())
        .put(Tags.SeriesNumber, identity.seriesNumber())
        .put(Tags.InstanceNumber, identity.instanceNumber())
        .put(Tags.SeriesDescription, series.description())
        .put(Tags.BodyPartExamined, series.bodyPart());
    if (!visit.dentist().isEmpty()) {
      to.put(Tags.PerformingPhysicianName, visit.dentist());
    }
  }

  private static void textOrEmpty(DataSet to, int tag, String text) {
    if (text.isEmpty()) {
      to.putEmpty(tag);
    } else {
      to.put(tag, text);
    }
  }
}
