package org.vestibule.check;

import java.util.List;
import org.vestibule.base.Outcome;
import org.vestibule.dicom.DataSet;
import org.vestibule.dicom.DicomFile;
import org.vestibule.dicom.Part10Reader;

/**
 * Checks an object against the VL Photographic Image IOD (PS3.3 A.32.4), its picture included, and
 * says in words what it finds. No finding holds a value of the object.
 */
public final class PhotographicChecker {

  private PhotographicChecker() {}

  /** What is wrong with a file; nothing if all is well. */
  public static List<Finding> check(byte[] file) {
    Outcome<DicomFile> read = Part10Reader.read(file);
    Findings findings = new Findings();
    if (read instanceof Outcome.Refused<DicomFile> refused) {
      findings.file(Severity.ERROR, refused.sentence(), "PS3.10 7.1");
      return findings.list();
    }
    DicomFile whole = read.orThrow();
    MetaRules.check(whole, findings);
    data(whole.data(), findings);
    PictureRules.check(whole.data(), whole.transferSyntax(), findings);
    return findings.list();
  }

  /** What is wrong with a data set, its picture and file header left out. */
  public static List<Finding> check(DataSet data) {
    Findings findings = new Findings();
    data(data, findings);
    return findings.list();
  }

  private static void data(DataSet data, Findings findings) {
    new TableWalk(data).walk(findings);
    ImageRules.check(data, findings);
    SideRules.check(data, findings);
    LayingRules.check(data, findings);
    ReferenceRules.check(data, findings);
  }
}
