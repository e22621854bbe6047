package org.vestibule.forward.worklist;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.vestibule.dental.Code;

/**
 * One scheduled procedure step, as a worklist told of it (PS3.4 Table K.6-1). Texts that were not
 * told are empty.
 *
 * @param name as DICOM PN text
 * @param sex F, M, O or empty
 * @param dentist who is to take the photographs
 * @param start on the practice's clock
 */
public record WorklistEntry(
    String studyUid,
    String accessionNumber,
    String patientId,
    String issuer,
    String name,
    @Nullable LocalDate birthDate,
    String sex,
    String referrer,
    String dentist,
    LocalDateTime start,
    String station,
    String modality,
    String requestedProcedureId,
    String description,
    List<Code> codes,
    String stepId,
    String stepDescription,
    List<Code> stepCodes) {

  public WorklistEntry {
    codes = List.copyOf(codes);
    stepCodes = List.copyOf(stepCodes);
  }
}
