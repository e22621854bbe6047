package org.vestibule.audit;

import java.util.List;

/**
 * The photographs of one study that an event was about.
 *
 * @param studyUid Study Instance UID
 * @param patientId the patient's number
 * @param patientName as DICOM PN text
 * @param accessionNumber empty if none
 * @param classes one row for each SOP class, in order
 * @param anonymous true if the copies that left hold no identity
 */
public record AuditedStudy(
    String studyUid,
    String patientId,
    String patientName,
    String accessionNumber,
    List<SopClass> classes,
    boolean anonymous) {

  public AuditedStudy {
    classes = List.copyOf(classes);
  }

  /**
   * The objects of one SOP class.
   *
   * @param instances their SOP Instance UIDs
   */
  public record SopClass(String uid, List<String> instances) {
    public SopClass {
      instances = List.copyOf(instances);
    }
  }
}
