package org.vestibule.check;

import java.util.List;
import java.util.Optional;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Dictionary;
import org.vestibule.dicom.Element;
import org.vestibule.dicom.Tags;

/** The file header (PS3.10 7.1): complete, in step with the data set, and with nothing hidden. */
final class MetaRules {

  private static final String SECTION = "PS3.10 7.1";
  private static final String PHOTOGRAPHIC = "1.2.840.10008.5.1.4.1.1.77.1.4";

  private static final List<Integer> REQUIRED =
      List.of(
          Tags.FileMetaInformationVersion,
          Tags.MediaStorageSOPClassUID,
          Tags.MediaStorageSOPInstanceUID,
          Tags.TransferSyntaxUID,
          Tags.ImplementationClassUID);

  private MetaRules() {}

  static void check(DicomFile file, Findings findings) {
    DataSet meta = file.meta();
    for (int tag : REQUIRED) {
      if (meta.element(tag).filter(element -> !element.isEmpty()).isEmpty()) {
        findings.error(tag, "is missing from the file header or empty", SECTION);
      }
    }
    byte[] version = meta.bytes(Tags.FileMetaInformationVersion);
    if (version.length == 2 && (version[0] != 0 || version[1] != 1)) {
      findings.error(Tags.FileMetaInformationVersion, "must be the bytes 00 01", SECTION);
    }
    for (Element element : meta) {
      known(element, findings);
    }
    same(file, Tags.MediaStorageSOPClassUID, Tags.SOPClassUID, findings);
    same(file, Tags.MediaStorageSOPInstanceUID, Tags.SOPInstanceUID, findings);
    sopClass(file.data(), findings);
    preamble(file.preamble(), findings);
  }

  private static void known(Element element, Findings findings) {
    ValueForms.check(element, findings);
    if (Dictionary.entry(element.tag()).isEmpty()) {
      findings.error(element.tag(), "is no element of the file header", SECTION);
    }
    if (element.tag() == Tags.PrivateInformation) {
      findings.warning(element.tag(), "holds what only its maker knows", SECTION);
    }
  }

  private static void same(DicomFile file, int header, int data, Findings findings) {
    Optional<String> inHeader = file.meta().string(header);
    if (inHeader.isPresent() && !inHeader.equals(file.data().string(data))) {
      findings.error(header, "differs from the data set's " + Dictionary.keyword(data), SECTION);
    }
  }

  private static void sopClass(DataSet data, Findings findings) {
    Optional<String> found = data.string(Tags.SOPClassUID);
    if (found.isPresent() && !found.get().equals(PHOTOGRAPHIC)) {
      findings.error(
          Tags.SOPClassUID,
          "must be " + PHOTOGRAPHIC + ", VL Photographic Image Storage",
          "PS3.4 B.5");
    }
  }

  private static void preamble(byte[] preamble, Findings findings) {
    for (byte b : preamble) {
      if (b != 0) {
        findings.file(
            Severity.WARNING,
            "has a preamble that is not all zero: another kind of file may hide in it",
            SECTION);
        return;
      }
    }
  }
}
